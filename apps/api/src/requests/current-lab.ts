import type { Lab } from '#libs/matching/src/index.js';
import { factsChangedSince, labOf, readLab } from '#libs/records/src/index.js';
import type { LabAsRead } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { EntityManager } from 'typeorm';

/** Roster and windows are read from now on: after a while a new look is due, even when no fact changed. */
const OLDEST_MS = 10 * 60_000;

/**
 * The lab as matching sees it, read once and kept while no fact changes: the same object for the same facts, because
 * matching indexes a lab once for each object.
 */
@Injectable()
export class CurrentLab {
  private kept: (LabAsRead & { readAtMs: number }) | null = null;
  private reading: Promise<Lab> | null = null;

  constructor(private readonly records: DataSource) {}

  /** One look at the stamp of the facts when nothing changed; several who ask at once share one reading. */
  async get(): Promise<Lab> {
    const { kept } = this;
    const fresh = kept && Date.now() - kept.readAtMs < OLDEST_MS;
    if (fresh && !(await factsChangedSince(this.records.manager, kept.stamp))) return kept.lab;
    return (this.reading ??= this.read().finally(() => (this.reading = null)));
  }

  /**
   * The same within the caller's transaction, through its own connection: who holds one must not wait for another. What that
   * transaction itself changed before is seen as well.
   */
  async within(manager: EntityManager): Promise<Lab> {
    const { kept } = this;
    const fresh = kept && Date.now() - kept.readAtMs < OLDEST_MS;
    return fresh && !(await factsChangedSince(manager, kept.stamp)) ? kept.lab : labOf(manager, Date.now());
  }

  private async read(): Promise<Lab> {
    const readAtMs = Date.now();
    this.kept = { ...(await readLab(this.records, readAtMs)), readAtMs };
    return this.kept.lab;
  }
}
