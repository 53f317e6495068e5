import { runMigrations, withBackend } from 'bullmq';
import type { Job } from 'bullmq';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { linkTo } from './queue-link.js';
import type { QueuePlace } from './queue-link.js';
import { QUEUE_NAMES, QUEUES, TASKS } from './task-table.js';
import type { QueueName, TaskName } from './task-table.js';

const END_WITHIN_MS = 3_000;

/** What lies in a queue: only which task it is. Everything else is in the lab's own table. */
export interface QueuedTask {
  taskId: string;
  name: TaskName;
}

/** The side that hands work over. */
export interface Queues {
  /** Hands tasks over; one that is there already is left alone. Throws when the queue cannot be reached. */
  add(tasks: QueuedTask[]): Promise<void>;
  /** How many wait, by queue. */
  waiting(): Promise<Record<QueueName, number>>;
  close(): Promise<void>;
}

/** The side that does the work. */
export interface TaskWorkers {
  /** Takes nothing more, and gives what is being done a moment to end; what does not is done again by another worker. */
  close(): Promise<void>;
}

export interface WorkersOptions {
  run(job: Job<QueuedTask>): Promise<void>;
  onTrouble(error: Error): void;
  /** After so long without a sign of life another worker takes the task over, ms. */
  lockMs?: number;
}

/** Makes the tables that queues on PostgreSQL need; queues on Redis need none. */
export async function prepareQueues(databaseUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  client.on('error', () => {}); // the question under way is refused as well, and with the reason
  await client.connect();
  await runMigrations(client).finally(() => client.end());
}

/** @param onTrouble hears of lost connections; they come back by themselves */
export function openQueues(place: QueuePlace, onTrouble: (error: Error) => void): Queues {
  const { connection, backend, close } = linkTo(place, { failFast: true, maxConnections: 4 }, onTrouble);
  const { Queue } = withBackend(backend);
  const queues = QUEUE_NAMES.map((name) => ({ name, queue: new Queue(name, { connection }) }));
  queues.forEach(({ queue }) => queue.on('error', onTrouble));
  return {
    add: async (tasks) => {
      for (const { name: queueName, queue } of queues) {
        const mine = tasks.filter(({ name }) => TASKS[name].queue === queueName);
        if (mine.length > 0) await queue.addBulk(mine.map(entryOf));
      }
    },
    waiting: async () => {
      const counts = await Promise.all(queues.map(async ({ name, queue }) => [name, await queue.getWaitingCount()]));
      return Object.fromEntries(counts) as Record<QueueName, number>;
    },
    close: async () => {
      await Promise.all(queues.map(({ queue }) => queue.close()));
      await close();
    },
  };
}

/** Begins to take tasks out of every queue. */
export function openWorkers(place: QueuePlace, { run, onTrouble, lockMs = 30_000 }: WorkersOptions): TaskWorkers {
  const { connection, backend, close } = linkTo(
    place,
    { failFast: false, maxConnections: 4 + QUEUE_NAMES.length },
    onTrouble,
  );
  const timing = { lockDuration: lockMs, stalledInterval: lockMs / 2, maxStalledCount: 10 };
  const { Worker } = withBackend(backend);
  const active = new Set<Promise<void>>();
  const runOne = async (job: Job<QueuedTask>) => {
    const running = run(job);
    active.add(running);
    await running.finally(() => active.delete(running));
  };
  const workers = QUEUE_NAMES.map((name) => {
    const options = { connection, concurrency: QUEUES[name], ...timing };
    return new Worker(name, runOne, options).on('error', onTrouble);
  });
  return {
    close: async () => {
      await Promise.all(workers.map((worker) => worker.pause(true)));
      await Promise.race([Promise.allSettled(active), pause(END_WITHIN_MS, null, { ref: false })]);
      await Promise.all(workers.map((worker) => worker.close(active.size > 0)));
      await close();
    },
  };
}

function entryOf(task: QueuedTask) {
  const { attempts, backoffMs } = TASKS[task.name];
  const backoff = { type: 'exponential', delay: backoffMs };
  // Removed when done: a finished entry kept under this id would swallow the next of the same id.
  const opts = { jobId: task.taskId, attempts, backoff, removeOnComplete: true, removeOnFail: true };
  return { name: task.name, data: task, opts };
}
