import type { DataSource } from 'typeorm';
import { addMonths, MS_PER_DAY } from '#libs/calendar/src/index.js';
import { labSettings } from '../people/lab-settings.repository.js';

/** Not worth a setting: nobody looks at these again after hours. */
const KEPT_DAYS = { signInAttempts: 1, factChanges: 2 };

/**
 * What is forgotten, each with the statement that deletes all from before an instant. The record, results and reports are not
 * among it. What is still on its way is kept, however old.
 */
const STATEMENTS = {
  endedTasks: `delete from task_run where coalesce(finished_at, announced_at) < $1 and state not in ('waiting', 'running', 'set-aside')`,
  endedSessions: 'delete from session where least(expires_at, revoked_at) < $1',
  notices: 'delete from notice where at < $1',
  deliveries: `delete from webhook_delivery where announced_at < $1 and state <> 'waiting'`,
  idempotencyKeys: 'delete from idempotency_key where created_at < $1',
  signInAttempts: 'delete from sign_in_attempt where at < $1',
  factChanges: 'delete from fact_change where at < $1',
};
type Forgotten = keyof typeof STATEMENTS;

/**
 * Deletes what the lab's retention no longer keeps. Notices and deliveries bear the time of the lab's clock; everything else here
 * was measured by the database, whose clock then says how old it is.
 *
 * @param nowMs by the lab's clock
 * @returns how many rows of each went
 */
export async function tidyUp(records: DataSource, nowMs: number): Promise<Record<Forgotten, number>> {
  const { retention, timeZone } = await labSettings(records.manager);
  const [{ at }] = await records.query<[{ at: Date }]>('select now() as at');
  const months = (count: number, untilMs = at.getTime()) => addMonths(untilMs, -count, timeZone);
  const days = (count: number) => at.getTime() - count * MS_PER_DAY;
  const before: Record<Forgotten, number> = {
    endedTasks: months(retention.endedTasksMonths),
    endedSessions: months(retention.endedSessionsMonths),
    notices: months(retention.noticesMonths, nowMs),
    deliveries: months(retention.deliveriesMonths, nowMs),
    idempotencyKeys: days(retention.idempotencyKeysDays),
    signInAttempts: days(KEPT_DAYS.signInAttempts),
    factChanges: days(KEPT_DAYS.factChanges),
  };
  const gone = {} as Record<Forgotten, number>;
  for (const what of Object.keys(STATEMENTS) as Forgotten[]) {
    const [, count] = await records.query<[unknown, number]>(STATEMENTS[what], [new Date(before[what])]);
    gone[what] = count;
  }
  return gone;
}
