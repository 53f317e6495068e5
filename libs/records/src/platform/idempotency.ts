import { AsyncLocalStorage } from 'node:async_hooks';
import { randomUUID } from 'node:crypto';
import type { DataSource, EntityManager } from 'typeorm';
import { LabError } from '#libs/errors/src/index.js';

export type Claim =
  | { state: 'yours'; claimId: string }
  | { state: 'answered'; status: number; body: unknown }
  | { state: 'done-already' }
  | { state: 'at-work' }
  | { state: 'other-request' };

interface KeyRow {
  requestHash: string;
  done: boolean;
  status: number | null;
  body: unknown;
}

/**
 * After so long without an answer a retry may take over. Should the first still be at work, its transaction fails when it finds
 * that the claim is no longer its own: of the two only one is done.
 */
const TAKE_OVER_AFTER_S = 5;

interface HeldClaim {
  personId: string;
  key: string;
  claimId: string;
}

const underWay = new AsyncLocalStorage<HeldClaim>();

/** Claims a key for one request, or tells what became of the first that carried it. */
export async function claimKey(
  records: DataSource,
  personId: string,
  key: string,
  requestHash: string,
): Promise<Claim> {
  const claimId = randomUUID();
  const claimed = await records.query<unknown[]>(
    `insert into idempotency_key as known (person_id, key, request_hash, claim_id) values ($1, $2, $3, $4)
     on conflict (person_id, key) do update set claim_id = $4, claimed_at = now()
       where known.request_hash = $3 and not known.done and known.status is null
         and known.claimed_at < now() - interval '${TAKE_OVER_AFTER_S} seconds'
     returning key`,
    [personId, key, requestHash, claimId],
  );
  if (claimed.length > 0) return { state: 'yours', claimId };
  const [known] = await records.query<KeyRow[]>(
    'select request_hash as "requestHash", done, status, body from idempotency_key where person_id = $1 and key = $2',
    [personId, key],
  );
  return known ? claimOf(known, requestHash) : { state: 'at-work' };
}

function claimOf({ requestHash, done, status, body }: KeyRow, sentHash: string): Claim {
  if (requestHash !== sentHash) return { state: 'other-request' };
  if (status !== null) return { state: 'answered', status, body };
  return { state: done ? 'done-already' : 'at-work' };
}

/** Does something under a claim: what it changes and that it was done are one transaction. */
export function underClaim<Done>(claim: HeldClaim, act: () => Promise<Done>): Promise<Done> {
  return underWay.run(claim, act);
}

/**
 * Says in the transaction of a change that the request under way was done, so that a retry will not do it again.
 *
 * @throws {LabError} `idempotency-key/taken-over` when a retry has begun to do it: this one must not
 */
export async function markDone(manager: EntityManager): Promise<void> {
  const claim = underWay.getStore();
  if (!claim) return;
  const [, mine] = await manager.query<[unknown, number]>(
    'update idempotency_key set done = true where person_id = $1 and key = $2 and claim_id = $3',
    [claim.personId, claim.key, claim.claimId],
  );
  if (mine === 0) throw new LabError('idempotency-key/taken-over', 'A retry of this request does it now.');
}

export async function storeAnswer(records: DataSource, claim: HeldClaim, status: number, body: unknown): Promise<void> {
  await records.query(
    'update idempotency_key set done = true, status = $4, body = $5 where person_id = $1 and key = $2 and claim_id = $3',
    [claim.personId, claim.key, claim.claimId, status, JSON.stringify(body ?? null)],
  );
}

/** After a refusal nothing was done: the key may be used again. */
export async function releaseKey(records: DataSource, { personId, key, claimId }: HeldClaim): Promise<void> {
  await records.query(
    'delete from idempotency_key where person_id = $1 and key = $2 and claim_id = $3 and status is null and not done',
    [personId, key, claimId],
  );
}
