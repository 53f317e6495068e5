import { AsyncLocalStorage } from 'node:async_hooks';
import type { DataSource, EntityManager } from 'typeorm';

export type Claim =
  | { state: 'yours' }
  | { state: 'answered'; status: number; body: unknown }
  | { state: 'done-already' }
  | { state: 'at-work' }
  | { state: 'other-request' };

interface Kept {
  requestHash: string;
  done: boolean;
  status: number | null;
  body: unknown;
}

/** A process that died has nothing under way any more after so long; a transaction that idles is ended sooner. */
const AT_WORK_AT_MOST_S = 90;

const underWay = new AsyncLocalStorage<{ personId: string; key: string }>();

/** Claims a key for one request, or tells what became of the first that carried it. */
export async function claimKey(records: DataSource, personId: string, key: string, requestHash: string): Promise<Claim> {
  const claimed = await records.query<unknown[]>(
    `insert into idempotency_key as kept (person_id, key, request_hash) values ($1, $2, $3)
     on conflict (person_id, key) do update set created_at = now()
       where kept.request_hash = $3 and not kept.done and kept.status is null
         and kept.created_at < now() - interval '${AT_WORK_AT_MOST_S} seconds'
     returning key`,
    [personId, key, requestHash],
  );
  if (claimed.length > 0) return { state: 'yours' };
  const [kept] = await records.query<Kept[]>(
    'select request_hash as "requestHash", done, status, body from idempotency_key where person_id = $1 and key = $2',
    [personId, key],
  );
  return kept ? claimOf(kept, requestHash) : { state: 'at-work' };
}

function claimOf({ requestHash, done, status, body }: Kept, asked: string): Claim {
  if (requestHash !== asked) return { state: 'other-request' };
  if (status !== null) return { state: 'answered', status, body };
  return { state: done ? 'done-already' : 'at-work' };
}

/** Does something under a key: what it changes and that it was done are kept in one transaction. */
export function underKey<Done>(personId: string, key: string, act: () => Promise<Done>): Promise<Done> {
  return underWay.run({ personId, key }, act);
}

/** Says in the transaction of a change that the request under way was done, so that a retry will not do it again. */
export async function markDone(manager: EntityManager): Promise<void> {
  const claim = underWay.getStore();
  if (!claim) return;
  await manager.query('update idempotency_key set done = true where person_id = $1 and key = $2', [claim.personId, claim.key]);
}

export async function keepAnswer(records: DataSource, personId: string, key: string, status: number, body: unknown): Promise<void> {
  const statement = 'update idempotency_key set done = true, status = $3, body = $4 where person_id = $1 and key = $2';
  await records.query(statement, [personId, key, status, JSON.stringify(body ?? null)]);
}

/** After a refusal nothing was done: the key may be used again. */
export async function releaseKey(records: DataSource, personId: string, key: string): Promise<void> {
  const statement = 'delete from idempotency_key where person_id = $1 and key = $2 and status is null and not done';
  await records.query(statement, [personId, key]);
}
