import { UnrecoverableError } from 'bullmq';
import type { Job } from 'bullmq';
import type { DataSource } from 'typeorm';
import { LabError } from '#libs/errors/src/index.js';
import type { Log } from '#libs/hosting/src/index.js';
import { beginRun, endRun, heartbeat, putBack, setAside } from '#libs/records/src/index.js';
import type { QueuedTask, TaskContext, TaskName } from '#libs/tasks/src/index.js';
import type { AnyProcessor } from './task-processor.js';

const SIGN_OF_LIFE_MS = 10_000;
const TELL_AT_MOST_EVERY_MS = 250;

type Attempt = Pick<Job<QueuedTask>, 'data' | 'attemptsMade' | 'opts'>;

/**
 * Runs one task out of the queue and keeps its state, progress and end in the lab's own table.
 *
 * @param isGivenUp whether the worker has stopped without waiting for what still runs
 */
export function taskRunner(
  records: DataSource,
  processors: Map<TaskName, AnyProcessor>,
  log: Log,
  isGivenUp = () => false,
) {
  return async (attempt: Attempt): Promise<void> => {
    const { taskId, name } = attempt.data;
    const processor = processors.get(name);
    if (!processor) return setAside(records, taskId);
    const run = await beginRun(records, taskId);
    if (!run) return;
    const alive = setInterval(() => void heartbeat(records, taskId).catch(() => {}), SIGN_OF_LIFE_MS);
    const context = contextOf(records, taskId);
    try {
      const result = await processor.run(run.payload, context);
      const stopped = await context.cancelled();
      await endRun(records, taskId, { state: stopped && !result ? 'cancelled' : 'done', result: result ?? null });
    } catch (error) {
      if (isGivenUp()) throw error; // nobody listens any more; another worker does it again
      await settle(records, attempt, error, log);
    } finally {
      clearInterval(alive);
    }
  };
}

function contextOf(records: DataSource, taskId: string): TaskContext {
  let toldAt = -Infinity;
  let cancelRequested = false;
  return {
    taskId,
    progress: async (pct, message) => {
      if (performance.now() - toldAt < TELL_AT_MOST_EVERY_MS && pct < 100) return;
      toldAt = performance.now();
      cancelRequested = await heartbeat(records, taskId, { pct, message });
    },
    cancelled: async () => cancelRequested || (cancelRequested = await heartbeat(records, taskId)),
  };
}

/** A refusal by a rule stays one, however often it is tried; anything else may have been bad luck. */
async function settle(records: DataSource, attempt: Attempt, error: unknown, log: Log): Promise<void> {
  const { taskId, name } = attempt.data;
  const final = error instanceof LabError || attempt.attemptsMade + 1 >= (attempt.opts.attempts ?? 1);
  const sentence = error instanceof LabError ? error.message : 'Something went wrong while the lab worked on this.';
  log.error(`task ${final ? 'failed' : 'will be tried again'}`, { taskId, task: name }, error);
  if (!final) {
    await putBack(records, taskId, sentence);
    throw error;
  }
  await endRun(records, taskId, { state: 'failed', error: sentence });
  throw new UnrecoverableError(sentence);
}
