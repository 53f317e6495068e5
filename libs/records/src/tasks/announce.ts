import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { TaskName, TaskPayload } from '#libs/tasks/src/index.js';

/** The channel on which dispatchers hear that something was announced. */
export const TASK_CHANNEL = 'lab_tasks';

interface Options {
  /** Of several announcements with the same name and key that wait to be dispatched, only the last is handed on. */
  key?: string;
  /** Not before so many milliseconds from now. */
  delayMs?: number;
}

/**
 * Announces work in the transaction that causes it: it reaches the worker when that transaction is through, and only then.
 *
 * @returns the id under which its state and progress can be asked for
 */
export async function announce<Name extends TaskName>(
  manager: EntityManager,
  name: Name,
  payload: TaskPayload<Name>,
  { key, delayMs = 0 }: Options = {},
): Promise<string> {
  const id = randomUUID();
  await manager.query(
    `with announced as (
       insert into task_run (id, name, key, payload, due_at) values ($1, $2, $3, $4, now() + $5::int * interval '1 millisecond'))
     select pg_notify($6, $5::text)`,
    [id, name, key ?? null, JSON.stringify(payload), Math.round(delayMs), TASK_CHANNEL],
  );
  return id;
}
