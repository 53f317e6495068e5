import { MS_PER_DAY, MS_PER_HOUR } from '#libs/calendar/src/index.js';
import type { DataSource } from 'typeorm';
import type { Log } from '#libs/hosting/src/index.js';
import {
  announceEvery,
  dispatchDue,
  findForgotten,
  listen,
  setAsideUnknown,
  takeUpSetAside,
  TASK_CHANNEL,
} from '#libs/records/src/index.js';
import { TASK_NAMES } from '#libs/tasks/src/index.js';
import type { Queues, TaskName } from '#libs/tasks/src/index.js';

const LOOK_EVERY_MS = 1_000; // what an announcement that was not heard waits at most
const CLOCKS_DIFFER_MS = 5; // a look that comes a moment early would find nothing due
const SWEEP_EVERY_MS = 15_000;

export interface Dispatcher {
  /** Ends the hand-over that is going on, then stops. */
  stop(): Promise<void>;
}

/**
 * Hands announced work to the queue: at once when it hears of it, and by looking now and then. What a queue has lost is
 * handed over again; what this program does not know is set aside. Any number of processes may do this at the same time.
 *
 * @param known the kinds of task that this program knows
 */
export function startDispatcher(
  records: DataSource,
  databaseUrl: string,
  queues: Queues,
  log: Log,
  known: readonly TaskName[] = TASK_NAMES,
): Dispatcher {
  const dispatch = oneAtATime(async () => {
    while ((await dispatchDue(records, (tasks) => queues.add(tasks), known)) > 0);
  }, log);
  const sweep = oneAtATime(async () => {
    await queues.add(await findForgotten(records, known));
    await setAsideUnknown(records, known);
    if ((await takeUpSetAside(records, known)) > 0) void dispatch();
    await announceEvery(records, 'tidy', MS_PER_DAY);
    await announceEvery(records, 'remind', MS_PER_HOUR);
  }, log);

  const later = (delayMs: number) => setTimeout(() => void dispatch(), delayMs + CLOCKS_DIFFER_MS).unref();
  const ear = listen(databaseUrl, {
    channel: TASK_CHANNEL,
    onMessage: (delayMs) => void later(Number(delayMs)),
    onConnected: () => void dispatch(),
  });
  const timers = [setInterval(() => void dispatch(), LOOK_EVERY_MS), setInterval(() => void sweep(), SWEEP_EVERY_MS)];
  void sweep();
  return {
    stop: async () => {
      timers.forEach(clearInterval);
      await ear.stop();
      await Promise.all([dispatch.settled(), sweep.settled()]);
    },
  };
}

/** Never runs twice at a time; asked for while it runs, it runs once more after that. */
function oneAtATime(work: () => Promise<void>, log: Log) {
  let running: Promise<void> | null = null;
  let again = false;
  const once = async () => {
    do {
      again = false;
      await work().catch((error: unknown) => log.warn('queue not reached, work waits in the database', error));
    } while (again);
    running = null;
  };
  const start = () => {
    if (running) again = true;
    else running = once();
    return running;
  };
  return Object.assign(start, { settled: () => running ?? Promise.resolve() });
}
