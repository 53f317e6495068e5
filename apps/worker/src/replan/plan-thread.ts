import { parentPort, workerData } from 'node:worker_threads';
import { judgePlan, makePlan } from '#libs/planning/src/index.js';
import type { Assignment, Word } from './plan-in-thread.js';

const { problem, timeMs, seed, rounds, stop } = workerData as Assignment;
const asked = new Int32Array(stop);
const say = (word: Word) => parentPort!.postMessage(word);
const TELL_EVERY_MS = 200;
let toldMs = 0;
let made: number | null = null;
const beganMs = performance.now();

const plan = makePlan(problem, {
  ...{ timeMs, seed, ...(rounds === null ? {} : { iterations: rounds }) },
  now: () => performance.now(),
  shouldStop: () => Atomics.load(asked, 0) === 1,
  onEnd: (spent) => (made = performance.now() - beganMs < timeMs ? null : spent.rounds),
  onProgress: ({ elapsedMs, cost }) => {
    if (elapsedMs - toldMs < TELL_EVERY_MS) return;
    toldMs = elapsedMs;
    say({ progress: Math.min(1, elapsedMs / timeMs), cost });
  },
});
const breaches = judgePlan(problem, plan);
say(
  breaches.length === 0
    ? { plan, rounds: made }
    : { failed: `The plan breaks ${breaches.map(({ rule }) => rule).join(', ')}.` },
);
