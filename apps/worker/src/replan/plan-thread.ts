import { parentPort, workerData } from 'node:worker_threads';
import { LabError } from '#libs/errors/src/index.js';
import { insertJobs, judgePlan, makePlan } from '#libs/planning/src/index.js';
import type { Plan } from '#libs/planning/src/index.js';
import type { Assignment, ThreadMessage } from './plan-in-thread.js';

const { problem, timeMs, seed, rounds, stop, insert } = workerData as Assignment;
const stopFlag = new Int32Array(stop);
const send = (message: ThreadMessage) => parentPort!.postMessage(message);
const PROGRESS_EVERY_MS = 200;
const beganMs = performance.now();

try {
  const { plan, rounds: made } = planned();
  const breaches = judgePlan(problem, plan);
  send(
    breaches.length === 0
      ? { plan, rounds: made }
      : { failed: `The plan breaks ${breaches.map(({ rule }) => rule).join(', ')}.` },
  );
} catch (error) {
  if (!(error instanceof LabError)) throw error;
  send({ refused: { code: error.code, sentence: error.message, facts: { ...error.facts } } });
}

function planned(): { plan: Plan; rounds: number | null } {
  const limits = { timeMs, now: () => performance.now(), shouldStop: () => Atomics.load(stopFlag, 0) === 1 };
  if (insert) return { plan: insertJobs(problem, insert, limits), rounds: null };
  let progressAtMs = 0;
  let made: number | null = null;
  const plan = makePlan(problem, {
    ...{ ...limits, seed, ...(rounds === null ? {} : { iterations: rounds }) },
    onEnd: (spent) => (made = performance.now() - beganMs < timeMs ? null : spent.rounds),
    onProgress: ({ elapsedMs, cost }) => {
      if (elapsedMs - progressAtMs < PROGRESS_EVERY_MS) return;
      progressAtMs = elapsedMs;
      send({ progress: Math.min(1, elapsedMs / timeMs), cost });
    },
  });
  return { plan, rounds: made };
}
