import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { markDone } from '../platform/idempotency.js';
import { RecordEventEntity } from './record-event.entity.js';

export interface RecordEntry {
  /** Who did it; null for the system. */
  actorId: string | null;
  /** What happened, e.g. `request/accepted`. */
  kind: string;
  subjectKind: string;
  subjectId: string;
  before?: Record<string, unknown> | null;
  after?: Record<string, unknown> | null;
  why?: string | null;
  /** Only for history that is loaded from elsewhere; the database's clock otherwise. */
  at?: Date;
}

/** Writes one event of the record into the caller's transaction. Its place in the chain is given at the end of it. */
export async function append(manager: EntityManager, entry: RecordEntry): Promise<void> {
  await manager.insert(RecordEventEntity, { id: randomUUID(), ...entry } as never);
  await markDone(manager);
}
