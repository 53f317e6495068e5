import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { tellPeople } from '../notices/tell-people.js';
import { markDone } from '../platform/idempotency.js';
import { tellPrograms } from '../webhooks/tell-programs.js';
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

/**
 * Writes one event of the record into the caller's transaction, and tells people and programs who want to hear of it. Its place
 * in the chain is given at the end of the transaction. Of history that is loaded nobody is told.
 */
export async function append(manager: EntityManager, entry: RecordEntry): Promise<void> {
  const id = randomUUID();
  await manager.insert(RecordEventEntity, { id, ...entry } as never);
  await markDone(manager);
  if (entry.at) return;
  await tellPeople(manager, id, entry);
  await tellPrograms(manager, id, entry);
}
