import type { DataSource } from 'typeorm';

export type Claim =
  | { state: 'yours' }
  | { state: 'answered'; status: number; body: unknown }
  | { state: 'at-work' }
  | { state: 'unknown' }
  | { state: 'other-request' };

interface Kept {
  requestHash: string;
  status: number | null;
  body: unknown;
  old: boolean;
}

const AT_WORK_AT_MOST_S = 120;

/** Claims a key for one request, or tells what became of the first that carried it. */
export async function claimKey(
  records: DataSource,
  personId: string,
  key: string,
  requestHash: string,
): Promise<Claim> {
  const claimed = await records.query<unknown[]>(
    `insert into idempotency_key (person_id, key, request_hash) values ($1, $2, $3) on conflict do nothing returning key`,
    [personId, key, requestHash],
  );
  if (claimed.length > 0) return { state: 'yours' };
  const [kept] = await records.query<Kept[]>(
    `select request_hash as "requestHash", status, body, created_at < now() - interval '${AT_WORK_AT_MOST_S} seconds' as old
     from idempotency_key where person_id = $1 and key = $2`,
    [personId, key],
  );
  return kept ? claimOf(kept, requestHash) : { state: 'at-work' };
}

function claimOf({ requestHash, status, body, old }: Kept, asked: string): Claim {
  if (requestHash !== asked) return { state: 'other-request' };
  if (status !== null) return { state: 'answered', status, body };
  return { state: old ? 'unknown' : 'at-work' };
}

export async function keepAnswer(
  records: DataSource,
  personId: string,
  key: string,
  status: number,
  body: unknown,
): Promise<void> {
  await records.query('update idempotency_key set status = $3, body = $4 where person_id = $1 and key = $2', [
    personId,
    key,
    status,
    JSON.stringify(body ?? null),
  ]);
}

/** After a refusal nothing was done: the key may be used again. */
export async function releaseKey(records: DataSource, personId: string, key: string): Promise<void> {
  await records.query('delete from idempotency_key where person_id = $1 and key = $2 and status is null', [
    personId,
    key,
  ]);
}
