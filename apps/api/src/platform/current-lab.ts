import type { LabSettings } from '#libs/contract/src/index.js';
import type { Lab } from '#libs/matching/src/index.js';
import { factsChangedSince, labOf, LabRecords, readLab } from '#libs/records/src/index.js';
import type { LabAsRead } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';

/** Roster and windows are read from now on: after a while a new look is due, even when no fact changed. */
const OLDEST_MS = 10 * 60_000;

/** When a request was asked, by the clock of `performance.now()`: what it is told must be at least as new. */
export interface Asked {
  askedAtMs: number;
}

/**
 * The lab as matching sees it, with its settings, read once and kept while no fact changes: the same objects for the same
 * facts, because matching indexes a lab once for each object.
 */
@Injectable()
export class CurrentLab {
  private kept: (LabAsRead & { readAtMs: number; trueAtMs: number }) | null = null;
  private looking: Promise<void> | null = null;

  constructor(private readonly records: LabRecords) {}

  /** The stamp of the facts that are kept, so that whoever asks the database anyway can ask whether it still holds. */
  get stamp(): string | null {
    return this.kept?.stamp ?? null;
  }

  /** Somebody who asked the database at this moment was told that no fact had changed since the stamp. */
  stillTrue(stamp: string, { askedAtMs }: Asked): void {
    const { kept } = this;
    if (kept?.stamp === stamp) kept.trueAtMs = Math.max(kept.trueAtMs, askedAtMs);
  }

  /** The lab; see {@link asRead}. */
  async get(asked?: Asked): Promise<Lab> {
    return (await this.asRead(asked)).lab;
  }

  /** The settings in force; see {@link asRead}. */
  async settings(asked: Asked): Promise<LabSettings> {
    return (await this.asRead(asked)).settings;
  }

  /**
   * Lab, settings and closed days as they were when it was asked, or later. No look at the database when the guard of the request
   * was told that no fact changed, one at the stamp otherwise; several who ask at once share it.
   */
  async asRead({ askedAtMs }: Asked = { askedAtMs: performance.now() }): Promise<LabAsRead> {
    for (;;) {
      const kept = this.young();
      if (kept && kept.trueAtMs >= askedAtMs) return kept;
      await (this.looking ??= this.look().finally(() => (this.looking = null))); // one that began before it was asked is not enough
    }
  }

  /**
   * The same within the caller's transaction, through its own connection: who holds one must not wait for another. What that
   * transaction itself changed before is seen as well.
   */
  async within(manager: EntityManager): Promise<Lab> {
    const kept = this.young();
    return kept && !(await factsChangedSince(manager, kept.stamp))
      ? kept.lab
      : labOf(manager, this.records.clock.nowMs());
  }

  private young() {
    const { kept } = this;
    return kept && this.records.clock.nowMs() - kept.readAtMs < OLDEST_MS ? kept : null;
  }

  private async look(): Promise<void> {
    const [readAtMs, askedAtMs] = [this.records.clock.nowMs(), performance.now()];
    const kept = this.young();
    if (kept && !(await factsChangedSince(this.records.manager, kept.stamp))) this.stillTrue(kept.stamp, { askedAtMs });
    else this.kept = { ...(await readLab(this.records.source, readAtMs)), readAtMs, trueAtMs: askedAtMs };
  }
}
