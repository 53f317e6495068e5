import type { EntityManager } from 'typeorm';
import type { LiveEvent } from '#libs/contract/src/index.js';

/** The channel on which API processes hear of changes. */
export const LIVE_CHANNEL = 'lab_live';

/** Tells every open screen that something changed, once the transaction is through; nothing is told when it is not. */
export async function notify(manager: EntityManager, event: LiveEvent): Promise<void> {
  await manager.query('select pg_notify($1, $2)', [LIVE_CHANNEL, JSON.stringify(event)]);
}
