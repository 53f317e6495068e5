import type { EntityManager } from 'typeorm';
import type { LiveEvent } from '#libs/contract/src/index.js';

/** The channel on which API processes hear of changes. */
export const LIVE_CHANNEL = 'lab_live';

/** Tells every open screen that something changed, once the transaction is committed. */
export function notify(manager: EntityManager, event: LiveEvent): Promise<void> {
  return notifyAll(manager, [event]);
}

/** The same for several, in one query. */
export async function notifyAll(manager: EntityManager, events: readonly LiveEvent[]): Promise<void> {
  if (events.length === 0) return;
  const messages = events.map((event) => JSON.stringify(event));
  await manager.query('select pg_notify($1, event) from unnest($2::text[]) event', [LIVE_CHANNEL, messages]);
}
