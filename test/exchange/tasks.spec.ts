import type { DataSource } from 'typeorm';
import { taskRunner } from '#apps/worker/src/platform/run-task.js';
import { startDispatcher } from '#apps/worker/src/platform/dispatcher.js';
import type { Dispatcher } from '#apps/worker/src/platform/dispatcher.js';
import type { AnyProcessor } from '#apps/worker/src/platform/task-processor.js';
import type { TaskView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { Log } from '#libs/hosting/src/index.js';
import {
  announce,
  requestCancel,
  figuresOfOperation,
  findForgotten,
  getTaskView,
  openRecords,
  TaskRunEntity,
  tidyUp,
} from '#libs/records/src/index.js';
import type { TaskWorkers, QueuePlace, Queues, TaskContext, TaskName } from '#libs/tasks/src/index.js';
import { openWorkers, openQueues, TASK_NAMES } from '#libs/tasks/src/index.js';
import { freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';
import { labClock } from '../support/lab-clock.js';
import { maybe } from '../support/maybe.js';
import { startRedis, withoutRedis } from '../support/redis.js';
import type { TestRedis } from '../support/redis.js';
import { until } from '../support/until.js';

const SILENT = new Log('quiet', 'spec', () => {});
const ignore = () => {};

describe.each(['PostgreSQL', 'Redis'])('tasks on %s', (backend) => {
  const missing = backend === 'Redis' ? withoutRedis() : null;
  const works = maybe(missing);
  let database: FreshDatabase;
  let records: DataSource;
  let redis: TestRedis | null = null;
  let queues: Queues;
  const running: (TaskWorkers | { close(): Promise<void> })[] = [];

  beforeAll(async () => {
    if (missing) return;
    database = await freshDatabase();
    records = await openRecords(database.url, { poolSize: 15 });
    redis = backend === 'Redis' ? await startRedis() : null;
    queues = openQueues(place(), ignore);
  });
  afterEach(async () => {
    await Promise.all(running.splice(0).map((one) => one.close()));
  });
  afterAll(async () => {
    if (missing) return;
    await queues.close();
    await redis?.stop();
    await records.destroy();
    await database.drop();
  });

  const place = (): QueuePlace => ({ databaseUrl: database.url, redisUrl: redis?.url });

  function work(
    run: (payload: { reportId: string }, context: TaskContext) => Promise<Record<string, unknown> | void>,
  ): void {
    const processor: AnyProcessor = { handles: 'issue-report', run };
    const processors = new Map<TaskName, AnyProcessor>([['issue-report', processor]]);
    running.push(
      openWorkers(place(), { run: taskRunner(records, processors, SILENT), onTrouble: ignore, lockMs: 1_000 }),
    );
  }

  function dispatch(): void {
    const dispatcher: Dispatcher = startDispatcher(records, database.url, queues, SILENT);
    running.unshift({ close: () => dispatcher.stop() });
  }

  const issue = (reportId: string, options = {}) =>
    records.transaction((manager) => announce(manager, 'issue-report', { reportId }, options));
  /** Rows as another version of the program may write them. */
  const tell = (name: string, payload: string, count: number) =>
    records.query(
      `insert into task_run (id, name, payload, announced_at, due_at)
       select gen_random_uuid(), $1, $2::jsonb, now() - interval '1 minute', now() - interval '1 minute' from generate_series(1, $3)`,
      [name, payload, count],
    );
  const statesOf = async (name: string) =>
    (await records.query<{ state: string }[]>('select state from task_run where name = $1 order by seq', [name])).map(
      ({ state }) => state,
    );
  const ended = (id: string) =>
    until(async () => {
      const view = await getTaskView(records.manager, id);
      return ['done', 'failed', 'cancelled'].includes(view.state) && view;
    });

  works('are done once each, however many dispatchers and workers there are', async () => {
    const done: string[] = [];
    const run = async ({ reportId }: { reportId: string }) => void done.push(reportId);
    work(run);
    work(run);
    dispatch();
    dispatch();
    const ids = await Promise.all(Array.from({ length: 60 }, (_, nr) => issue(`report ${nr}`)));
    await Promise.all(ids.map(ended));
    expect(done.sort()).toEqual(Array.from({ length: 60 }, (_, nr) => `report ${nr}`).sort());
  });

  works('tell their progress and result, and wait as long as they were told to', async () => {
    work(async (_, { progress }) => {
      await progress(40, 'Drawing page 2 of 5.');
      return { pages: 5 };
    });
    dispatch();
    const began = Date.now();
    const id = await issue('report', { delayMs: 400 });
    expect(await ended(id)).toEqual<TaskView>({
      id,
      name: 'issue-report',
      state: 'done',
      progressPct: 100,
      message: 'Drawing page 2 of 5.',
      error: null,
      result: { pages: 5 },
    });
    expect(Date.now() - began).toBeGreaterThanOrEqual(400);
  });

  works('are tried again after bad luck, and not after a refusal', async () => {
    const tries = new Map<string, number>();
    work(async ({ reportId }) => {
      const nr = (tries.get(reportId) ?? 0) + 1;
      tries.set(reportId, nr);
      if (reportId === 'refused') throw new LabError('report/incomplete', 'The person authorising is missing.');
      if (nr < 3) throw new Error('the disk is full');
    });
    dispatch();
    const [lucky, refused] = await Promise.all([issue('lucky'), issue('refused')]);
    expect(await ended(refused)).toMatchObject({ state: 'failed', error: 'The person authorising is missing.' });
    expect(await ended(lucky)).toMatchObject({ state: 'done', error: null });
    expect(Object.fromEntries(tries)).toEqual({ lucky: 3, refused: 1 });
  });

  works('stop when somebody asks, before they begin and while they run', async () => {
    let began = 0;
    work(async (_, { cancelled }) => {
      began++;
      await until(cancelled);
    });
    const early = await issue('early');
    await requestCancel(records.manager, early);
    dispatch();
    expect(await ended(early)).toMatchObject({ state: 'cancelled' });
    const late = await issue('late');
    await until(async () => (await getTaskView(records.manager, late)).state === 'running');
    await requestCancel(records.manager, late);
    expect(await ended(late)).toMatchObject({ state: 'cancelled' });
    expect(began).toBe(1);
  });

  works('that wait with the same key are done once, and count as done for all who asked', async () => {
    const done: string[] = [];
    work(async ({ reportId }) => void done.push(reportId));
    const ids = [
      await issue('first', { key: 'one' }),
      await issue('second', { key: 'one' }),
      await issue('third', { key: 'one' }),
    ];
    dispatch();
    const views = await Promise.all(ids.map(ended));
    expect(views.map(({ id, state }) => ({ id, state }))).toEqual(ids.map((id) => ({ id, state: 'done' })));
    expect(done).toEqual(['third']);
  });

  works('that was handed over but has not begun does the work of those that come later', async () => {
    const done: string[] = [];
    dispatch();
    const first = await issue('first', { key: 'two' });
    await until(() => allHandedOver(records, [first]));
    const second = await issue('second', { key: 'two' });
    await until(() => allHandedOver(records, [second]));
    work(async ({ reportId }) => void done.push(reportId));
    expect((await Promise.all([first, second].map(ended))).map(({ state }) => state)).toEqual(['done', 'done']);
    expect(done).toEqual(['second']);
  });

  works('of a kind that nobody here knows, or with nothing right in them, keep no others from being done', async () => {
    const done: string[] = [];
    work(async ({ reportId }) => void done.push(reportId.toUpperCase()));
    const failedBefore = (await statesOf('issue-report')).filter((state) => state === 'failed').length;
    await tell('sing', '{}', 3);
    await tell('issue-report', 'null', 2);
    await tell('issue-report', '{"reportId": 5}', 2);
    dispatch();
    const after = await issue('after them');
    expect(await ended(after)).toMatchObject({ state: 'done' });
    expect(done).toEqual(['AFTER THEM']);
    await until(async () => (await statesOf('sing')).every((state) => state === 'set-aside'));
    expect((await figuresOfOperation(records, labClock.now())).tasks_set_aside).toBeGreaterThanOrEqual(3); // this worker knows one kind only
    await until(
      async () => (await statesOf('issue-report')).filter((state) => state === 'failed').length === failedBefore + 4,
    );
    expect(await statesOf('sing')).toEqual(['set-aside', 'set-aside', 'set-aside']);
    await records.query(`delete from task_run where name = 'sing'`);
  });

  works('of a kind that only a newer worker knows are kept until one comes, whoever gets them first', async () => {
    const older = TASK_NAMES.filter((name) => name !== 'issue-report');
    const waits = await issue('waits');
    await records.query(`update task_run set due_at = now() - interval '1 minute' where id = $1`, [waits]);
    const oldDispatcher = startDispatcher(records, database.url, queues, SILENT, older);
    const oldWorkers = openWorkers(place(), {
      run: taskRunner(records, new Map(), SILENT),
      onTrouble: ignore,
      lockMs: 1_000,
    });
    await until(async () => (await getTaskView(records.manager, waits)).state === 'set-aside');
    const taken = await issue('taken');
    await queues.add([{ taskId: taken, name: 'issue-report' }]); // as a newer dispatcher does
    await until(async () => (await getTaskView(records.manager, taken)).state === 'set-aside');
    await records.query(`update task_run set announced_at = announced_at - interval '10 years' where id = any($1)`, [
      [waits, taken],
    ]);
    await tidyUp(records, labClock.nowMs());
    await oldDispatcher.stop();
    await oldWorkers.close();

    const done: string[] = [];
    work(async ({ reportId }) => void done.push(reportId));
    dispatch();
    expect((await Promise.all([waits, taken].map(ended))).map(({ state }) => state)).toEqual(['done', 'done']);
    expect(done.sort()).toEqual(['taken', 'waits']);
  });

  works('that were set aside can be cancelled', async () => {
    await tell('sing', '{}', 1);
    dispatch();
    await until(async () => (await statesOf('sing'))[0] === 'set-aside');
    const [{ id }] = await records.query<[{ id: string }]>(`select id from task_run where name = 'sing'`);
    expect(await requestCancel(records.manager, id)).toMatchObject({ state: 'cancelled' });
  });

  // On PostgreSQL a queue is lost only together with everything else.
  if (backend === 'Redis') {
    works('are not lost with a queue that lost everything', async () => {
      dispatch();
      const ids = await Promise.all(['a', 'b', 'c'].map((reportId) => issue(reportId)));
      await until(() => allHandedOver(records, ids));
      await redis!.loseEverything();
      const done: string[] = [];
      work(async ({ reportId }) => void done.push(reportId));
      const aheadMs = 60_000; // the sweep looks for what was handed over longer ago than half a minute
      await until(async () =>
        queues.add(await findForgotten(records, TASK_NAMES, aheadMs)).then(
          () => true,
          () => false,
        ),
      );
      await Promise.all(ids.map(ended));
      expect(done.sort()).toEqual(['a', 'b', 'c']);
    });
  }
});

async function allHandedOver(records: DataSource, ids: string[]): Promise<boolean> {
  const rows = await records.manager.findBy(
    TaskRunEntity,
    ids.map((id) => ({ id })),
  );
  return rows.every(({ dispatchedAt }) => dispatchedAt !== null);
}
