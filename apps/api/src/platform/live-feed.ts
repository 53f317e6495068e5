import { Inject, Injectable } from '@nestjs/common';
import type { BeforeApplicationShutdown, OnApplicationBootstrap } from '@nestjs/common';
import { Subject } from 'rxjs';
import { LIVE_CHANNEL, listen } from '#libs/records/src/index.js';
import type { Listener } from '#libs/records/src/index.js';
import type { ApiConfig } from '../config.js';
import { API_CONFIG } from './api-config.js';

/** Changes as they are told by whichever process made them; `missed` after a gap in which some may not have been heard. */
export type Heard = { kind: 'change'; event: string } | { kind: 'missed' };

/** Hears every change once for all screens that this process serves. */
@Injectable()
export class LiveFeed implements BeforeApplicationShutdown, OnApplicationBootstrap {
  readonly heard = new Subject<Heard>();
  private listener: Listener | null = null;

  constructor(@Inject(API_CONFIG) private readonly config: ApiConfig) {}

  onApplicationBootstrap(): void {
    this.listener = listen(this.config.databaseUrl, {
      channel: LIVE_CHANNEL,
      onMessage: (event) => this.heard.next({ kind: 'change', event }),
      onConnected: () => this.heard.next({ kind: 'missed' }),
    });
  }

  /** Before the server stops: it waits for every open answer, and a stream of changes has no end of its own. */
  async beforeApplicationShutdown(): Promise<void> {
    this.heard.complete();
    await this.listener?.stop();
  }
}
