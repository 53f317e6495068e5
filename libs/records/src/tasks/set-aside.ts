import type { DataSource } from 'typeorm';
import type { TaskName } from '#libs/tasks/src/index.js';

/** A worker that knows a task hands it over within a second: what waits longer than this is known to none that runs. */
const NOBODY_AFTER_S = 10;

/**
 * Sets aside what is due and of a kind that this program does not know, such as one of a newer version: it is kept as it is, and
 * keeps nothing else waiting.
 */
export async function setAsideUnknown(records: DataSource, known: readonly TaskName[]): Promise<void> {
  await records.query(
    `update task_run set state = 'set-aside', message = $2
     where dispatched_at is null and state = 'waiting' and name <> all($1) and due_at < now() - interval '${NOBODY_AFTER_S} seconds'`,
    [known, KEPT],
  );
}

/** The same for one that came out of the queue, where a newer version had put it. */
export async function setAside(records: DataSource, id: string): Promise<void> {
  await records.query(
    `update task_run set state = 'set-aside', message = $2, dispatched_at = null where id = $1 and state in ('waiting', 'running')`,
    [id, KEPT],
  );
}

const KEPT = 'It waits for a worker that knows this kind of work.';

/** Makes what was set aside and is known here due now. @returns how many that were */
export async function takeUpSetAside(records: DataSource, known: readonly TaskName[]): Promise<number> {
  const [, taken] = await records.query<[unknown, number]>(
    `update task_run set state = 'waiting', message = '', due_at = now(), dispatched_at = null
     where state = 'set-aside' and name = any($1)`,
    [known],
  );
  return taken;
}
