import type { DataSource } from 'typeorm';

/** What may be forgotten, and after how many days. The record, results and reports are not among it. */
export const KEPT_DAYS = { endedTasks: 30, endedSessions: 90, signInAttempts: 1, idempotencyKeys: 2, factChanges: 2 };

/** Deletes what nobody needs any more. @returns how many rows of each went */
export async function tidyUp(records: DataSource): Promise<Record<keyof typeof KEPT_DAYS, number>> {
  const statements: Record<keyof typeof KEPT_DAYS, string> = {
    endedTasks: `delete from task_run where coalesce(finished_at, announced_at) < $1 and state not in ('waiting', 'running')`,
    endedSessions: 'delete from session where least(expires_at, revoked_at) < $1',
    signInAttempts: 'delete from sign_in_attempt where at < $1',
    idempotencyKeys: 'delete from idempotency_key where created_at < $1',
    factChanges: 'delete from fact_change where at < $1',
  };
  const gone = {} as Record<keyof typeof KEPT_DAYS, number>;
  for (const [what, statement] of Object.entries(statements) as [keyof typeof KEPT_DAYS, string][]) {
    const before = new Date(Date.now() - KEPT_DAYS[what] * 86_400_000);
    const [, count] = await records.query<[unknown, number]>(statement, [before]);
    gone[what] = count;
  }
  return gone;
}
