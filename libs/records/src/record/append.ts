import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { insertRows } from '../platform/write-rows.js';
import type { EventName } from './event-kinds.js';
import { RecordEventEntity } from './record-event.entity.js';

/** One line of the record. */
export interface RecordEntry {
  /** Who did it; null for the system. */
  actorId: string | null;
  /** What happened, e.g. `request/accepted`. */
  kind: EventName;
  subjectKind: string;
  subjectId: string;
  before?: Record<string, unknown> | null | undefined;
  after?: Record<string, unknown> | null | undefined;
  why?: string | null | undefined;
  at: Date;
}

/**
 * Writes one event into the record, in the caller's transaction. Its place in the chain is given at the end of that transaction.
 * Nobody is told: whoever changes something uses `act`; this is for history that is loaded.
 *
 * @returns the id of the event
 */
export async function append(manager: EntityManager, entry: RecordEntry): Promise<string> {
  const id = randomUUID();
  await insertRows(manager, RecordEventEntity, [{ id, ...entry }]);
  return id;
}
