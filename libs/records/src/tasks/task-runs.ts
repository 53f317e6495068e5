import { In } from 'typeorm';
import type { DataSource, EntityManager } from 'typeorm';
import type { TaskView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { QueuedTask, TaskName } from '#libs/tasks/src/index.js';
import { notify } from '../platform/live-events.js';
import { updateRows } from '../platform/write-rows.js';
import { announce } from './announce.js';
import { TaskRunEntity } from './task-run.entity.js';

const AT_A_TIME = 200;
const RESEND_AFTER_MS = 10_000; // a task that was queued longer ago than this and still has not begun is queued again
const DEAD_AFTER_MS = 30_000; // three signs of life missed

interface Due {
  id: string;
  name: TaskName;
  key: string | null;
}

/**
 * Hands everything that is due and of a known kind to the queue: rows are marked in the transaction that queues them, so that a queue that
 * cannot be reached leaves them as they were. Queueing twice after a crash in between is harmless: the ids are the same.
 * Of those with the same name and key only the last is handed on, and not even that while an earlier one has not begun: that one
 * will see all that they announce, because it reads when it begins.
 *
 * @returns how many were taken care of
 */
export function dispatchDue(
  records: DataSource,
  enqueue: (tasks: QueuedTask[]) => Promise<void>,
  known: readonly TaskName[],
): Promise<number> {
  return records.transaction(async (manager) => {
    const due = await manager.query<Due[]>(
      `select id, name, key from task_run where dispatched_at is null and due_at <= now()
         and state <> 'set-aside' and name = any($1)
       order by seq limit ${AT_A_TIME} for update skip locked`,
      [known],
    );
    if (due.length === 0) return 0;
    const queued: QueuedTask[] = [];
    for (const { last, others } of groupsOf(due)) {
      const doer = (await findNotBegun(manager, last)) ?? last.id;
      if (doer === last.id) queued.push({ taskId: last.id, name: last.name });
      const merged = doer === last.id ? others : [...others, last];
      if (merged.length > 0)
        await updateRows(manager, TaskRunEntity, { id: In(merged.map(({ id }) => id)) }, { mergedInto: doer });
    }
    await enqueue(queued);
    await manager.query('update task_run set dispatched_at = now() where id = any($1)', [due.map(({ id }) => id)]);
    return due.length;
  });
}

function groupsOf(due: Due[]): { last: Due; others: Due[] }[] {
  const groups = new Map<string, Due[]>();
  for (const task of due) {
    const group = task.key === null ? task.id : `${task.name}\n${task.key}`;
    groups.set(group, [...(groups.get(group) ?? []), task]);
  }
  return [...groups.values()].map((tasks) => ({ last: tasks.at(-1)!, others: tasks.slice(0, -1) }));
}

/** One that was handed over and cannot begin before this transaction ends; it gets the newest payload. */
async function findNotBegun(manager: EntityManager, { id, name, key }: Due): Promise<string | null> {
  if (key === null) return null;
  const [found] = await manager.query<{ id: string }[]>(
    `select id from task_run where name = $1 and key = $2 and state = 'waiting' and attempts = 0 and not cancel_asked
       and dispatched_at is not null and merged_into is null order by seq limit 1 for update skip locked`,
    [name, key],
  );
  if (!found) return null;
  await manager.query('update task_run set payload = (select payload from task_run where id = $2) where id = $1', [
    found.id,
    id,
  ]);
  return found.id;
}

/** Tasks that a queue ought to have but may have lost, with all it held. Those that it has are not disturbed when they are queued again. @param aheadMs looks as if it were so much later */
export async function findForgotten(
  records: DataSource,
  known: readonly TaskName[],
  aheadMs = 0,
): Promise<QueuedTask[]> {
  return records.query(
    `select id as "taskId", name from task_run
     where merged_into is null and dispatched_at is not null and name = any($3)
       and ((state = 'waiting' and dispatched_at < now() - $1 * interval '1 millisecond')
         or (state = 'running' and alive_at < now() - $2 * interval '1 millisecond'))
     order by seq limit ${AT_A_TIME}`,
    [RESEND_AFTER_MS - aheadMs, DEAD_AFTER_MS - aheadMs, known],
  );
}

/**
 * Claims a run for one attempt.
 *
 * @returns what to do, or null when it is finished already, or was cancelled before it began
 */
export async function beginRun(records: DataSource, id: string): Promise<TaskRunEntity | null> {
  const [, begun] = await records.query<[unknown, number]>(
    `update task_run set state = 'running', attempts = attempts + 1, alive_at = now(), error = null,
       started_at = coalesce(started_at, now()) where id = $1 and state in ('waiting', 'running') and not cancel_asked`,
    [id],
  );
  if (begun === 0) {
    await endRun(records, id, { state: 'cancelled', message: 'Cancelled before it began.' });
    return null;
  }
  await notify(records.manager, { topic: 'tasks', id });
  return records.manager.findOneByOrFail(TaskRunEntity, { id }); // read after it began: until then its payload may be replaced
}

/** Says how far a run is. @returns whether somebody asked to stop it */
export async function heartbeat(
  records: DataSource,
  id: string,
  said?: { pct: number; message: string },
): Promise<boolean> {
  // TypeORM gives the rows of an update with their count beside them.
  const [rows] = await records.query<[{ cancelRequested: boolean }[], number]>(
    `update task_run set alive_at = now(), progress_pct = coalesce($2, progress_pct), message = coalesce($3, message)
     where id = $1 and state = 'running' returning cancel_asked as "cancelRequested"`,
    [id, said?.pct ?? null, said?.message ?? null],
  );
  if (said) await notify(records.manager, { topic: 'tasks', id });
  return rows[0]?.cancelRequested ?? true;
}

export interface RunEnd {
  state: 'done' | 'failed' | 'cancelled';
  message?: string;
  error?: string;
  result?: Record<string, unknown> | null;
}

export async function endRun(records: DataSource, id: string, end: RunEnd): Promise<void> {
  await records.query(
    `update task_run set state = $2, finished_at = now(), message = coalesce($3, message), error = $4, result = $5,
       progress_pct = case when $2 = 'done' then 100 else progress_pct end
     where (id = $1 or merged_into = $1) and state in ('waiting', 'running')`,
    [id, end.state, end.message ?? null, end.error ?? null, end.result ? JSON.stringify(end.result) : null],
  );
  await notify(records.manager, { topic: 'tasks', id });
}

/** After a failed attempt that will be followed by another. */
export async function putBack(records: DataSource, id: string, error: string): Promise<void> {
  await records.query(`update task_run set state = 'waiting', error = $2 where id = $1 and state = 'running'`, [
    id,
    error,
  ]);
  await notify(records.manager, { topic: 'tasks', id });
}

export async function getTaskView(manager: EntityManager, id: string): Promise<TaskView> {
  const announced = await manager.findOneBy(TaskRunEntity, { id });
  const run = announced?.mergedInto ? await manager.findOneBy(TaskRunEntity, { id: announced.mergedInto }) : announced;
  if (!announced || !run) throw new LabError('task/unknown', 'There is no such task.', { taskId: id });
  const { name, state, progressPct, message, error, result } = run;
  return { id, name, state, progressPct, message, error, result };
}

/** Asks a run to stop; one that has not begun will not begin, and one that was set aside ends here. */
export async function requestCancel(manager: EntityManager, id: string): Promise<TaskView> {
  await manager.query(
    `update task_run set cancel_asked = true where state in ('waiting', 'running')
       and id = (select coalesce(merged_into, id) from task_run where id = $1)`,
    [id],
  );
  await manager.query(
    `update task_run set state = 'cancelled', finished_at = now(), message = 'Cancelled before it began.'
     where id = $1 and state = 'set-aside'`,
    [id],
  );
  return getTaskView(manager, id);
}

/** Announces work that comes again and again, unless it was announced in the last `everyMs`. Any number of processes may ask. */
export async function announceEvery(records: DataSource, name: 'tidy' | 'remind', everyMs: number): Promise<void> {
  await records.transaction(async (manager) => {
    await manager.query('select pg_advisory_xact_lock(hashtext($1))', [name]);
    const [{ due }] = await manager.query<[{ due: boolean }]>(
      `select not exists (select 1 from task_run where name = $1 and announced_at > now() - $2 * interval '1 millisecond') as due`,
      [name, everyMs],
    );
    if (due) await announce(manager, name, {});
  });
}
