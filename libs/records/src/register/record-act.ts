import type { LiveEvent } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import { touchFacts } from '../platform/facts.js';
import { notify } from '../platform/live-events.js';
import { append } from '../record/append.js';
import type { RecordEntry } from '../record/append.js';
import { tellPeople } from '../notices/tell-people.js';
import { announce } from '../tasks/announce.js';
import { tellPrograms } from '../webhooks/tell-programs.js';

/** Changes that come close together are planned once. */
const GATHER_MS = 1_000;

export interface Act extends RecordEntry {
  /** What open screens are told. */
  live: LiveEvent['topic'];
  /** Whether plans are made from what changed. */
  planning?: boolean;
}

/** All that goes with a change, in its transaction: its event in the record, word to open screens, and a new plan when one is due. */
export async function recordAct(manager: EntityManager, { live, planning = false, ...entry }: Act): Promise<void> {
  const id = await append(manager, entry);
  await tellPeople(manager, id, entry);
  await tellPrograms(manager, id, entry);
  await notify(manager, { topic: live, id: entry.subjectId });
  if (planning) await factsChanged(manager, entry.kind, entry.actorId);
}

/** Something that plans are made from changed: plans made before are stale, and a new one is announced. */
export async function factsChanged(manager: EntityManager, because: string, byId: string | null): Promise<void> {
  await touchFacts(manager, because);
  await announce(manager, 'replan', { because, byId }, { key: 'replan', delayMs: GATHER_MS });
}
