import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Plan, Problem } from '#libs/planning/src/index.js';

/** What the thread is given. */
export interface Assignment {
  problem: Problem;
  timeMs: number;
  seed: number;
  /** Rounds after which the search ends, if the time is not over before; null leaves it to the time. */
  rounds: number | null;
  /** One 32-bit number; 1 asks to stop. */
  stop: SharedArrayBuffer;
}

/** What the thread says. */
export type Word = { progress: number; cost: number } | { plan: Plan; rounds: number | null } | { failed: string };

interface Watch {
  /** As {@link Assignment.rounds}: plans that are compared are thought about equally long, however busy the machine is meanwhile. */
  rounds?: number | null;
  /** Told how many rounds the search made in its time; null when it ended before, as where nothing is late. */
  onEnd?: (rounds: number | null) => void;
  onProgress?: (share: number, cost: number) => void;
  /** Asked now and then; true ends the search with the best plan so far. */
  shouldStop?: () => Promise<boolean>;
}

const LOOK_MS = 250;

/**
 * Plans on a thread of its own, so that whoever asks goes on answering.
 *
 * @throws Error when the search failed, or found a plan that its own judge refuses
 */
export async function planInThread(problem: Problem, timeMs: number, seed: number, watch: Watch = {}): Promise<Plan> {
  const stop = new SharedArrayBuffer(4);
  const thread = new Worker(threadFile(), {
    workerData: { problem, timeMs, seed, stop, rounds: watch.rounds ?? null } satisfies Assignment,
  });
  const looking = setInterval(() => void lookWhether(watch.shouldStop, stop), LOOK_MS);
  try {
    return await new Promise<Plan>((resolve, reject) => {
      thread.on('message', (word: Word) => {
        if ('plan' in word) {
          watch.onEnd?.(word.rounds);
          resolve(word.plan);
        }
        if ('failed' in word) reject(new Error(word.failed));
        if ('progress' in word) watch.onProgress?.(word.progress, word.cost);
      });
      thread.on('error', reject);
      thread.on('exit', (code) => reject(new Error(`The planning thread ended with ${code}.`)));
    });
  } finally {
    clearInterval(looking);
    await thread.terminate();
  }
}

/** Who cannot be asked, as while the database restarts, has not asked to stop. */
async function lookWhether(shouldStop: Watch['shouldStop'], stop: SharedArrayBuffer): Promise<void> {
  const asked = await shouldStop?.().catch(() => false);
  if (asked) Atomics.store(new Int32Array(stop), 0, 1);
}

/** A thread runs what was built, also when this file runs from its source. */
function threadFile(): string {
  const here = fileURLToPath(import.meta.url);
  if (here.endsWith('.js')) return join(dirname(here), 'plan-thread.js');
  let root = dirname(here);
  while (!existsSync(join(root, 'package.json'))) root = dirname(root);
  return join(root, 'dist', 'apps', 'worker', 'src', 'replan', 'plan-thread.js');
}
