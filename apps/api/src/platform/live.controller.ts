import { Controller, Get, Req, Res } from '@nestjs/common';
import { ApiOkResponse } from '@nestjs/swagger';
import type { Response } from 'express';
import { LabError } from '#libs/errors/src/index.js';
import { By } from './by.js';
import { LiveFeed } from './live-feed.js';
import type { Heard } from './live-feed.js';
import { May } from './may.js';
import { SessionsService } from './sessions.service.js';
import type { LabRequest, SignedIn } from './signed-in.js';

const SIGN_OF_LIFE_MS = 15_000; // below the idle limit of common proxies, and often enough to end streams of ended sessions and tokens
const MOST_STREAMS_EACH = 20;

@Controller('live')
export class LiveController {
  private readonly streams = new Map<string, number>();

  constructor(
    private readonly feed: LiveFeed,
    private readonly sessions: SessionsService,
  ) {}

  /** Server-sent events: `change` with what kind of thing changed and which, `missed` when everything should be read again. */
  @Get()
  @May('hear-changes')
  @ApiOkResponse({
    description: 'An endless stream of events.',
    content: { 'text/event-stream': { schema: { type: 'string' } } },
  })
  hear(@By() by: SignedIn, @Req() request: LabRequest, @Res() response: Response): void {
    this.count(by.id, 1);
    response.writeHead(200, {
      'Content-Type': 'text/event-stream',
      'Cache-Control': 'no-store',
      'X-Accel-Buffering': 'no',
    });
    response.write('retry: 1000\n\n');
    const hearing = this.feed.heard.subscribe({
      next: (heard) => response.write(lineOf(heard)),
      complete: () => response.end(),
    });
    const life = setInterval(
      () => void this.stillIn(by).then((stays) => (stays ? response.write(': still here\n\n') : response.end())),
      SIGN_OF_LIFE_MS,
    );
    request.once('close', () => {
      clearInterval(life);
      hearing.unsubscribe();
      this.count(by.id, -1);
    });
  }

  private count(personId: string, by: 1 | -1): void {
    const open = (this.streams.get(personId) ?? 0) + by;
    if (open > MOST_STREAMS_EACH)
      throw new LabError('live/too-many', `Not more than ${MOST_STREAMS_EACH} open pages each.`);
    if (open > 0) this.streams.set(personId, open);
    else this.streams.delete(personId);
  }

  private async stillIn(by: SignedIn): Promise<boolean> {
    return this.sessions.isStillIn(by).catch(() => true);
  }
}

function lineOf(heard: Heard): string {
  return heard.kind === 'missed' ? 'event: missed\ndata: {}\n\n' : `event: change\ndata: ${heard.event}\n\n`;
}
