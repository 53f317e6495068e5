import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { LabError } from '#libs/errors/src/index.js';
import type { Plan, Problem } from '#libs/planning/src/index.js';

/** What the thread is given. */
export interface Assignment {
  problem: Problem;
  timeMs: number;
  seed: number;
  /** Rounds after which the search ends, if the time is not over before; null leaves it to the time. */
  rounds: number | null;
  /** Jobs to insert into the published plan, which is otherwise left as it is; null plans everything anew. */
  insert: readonly string[] | null;
  /** One 32-bit number; 1 asks to stop. */
  stop: SharedArrayBuffer;
}

/** What the thread sends back. */
export type ThreadMessage =
  | { progress: number; cost: number }
  | { plan: Plan; rounds: number | null }
  | { refused: { code: string; sentence: string; facts: Record<string, unknown> } }
  | { failed: string };

interface PlanningOptions {
  /** As {@link Assignment.rounds}. Plans that are compared get equally many rounds, however busy the machine is. */
  rounds?: number | null;
  /** As {@link Assignment.insert}. */
  insert?: readonly string[] | null;
  /** Called with the number of rounds that the search made in its time; null when it ended earlier, as where nothing is late. */
  onEnd?: (rounds: number | null) => void;
  onProgress?: (share: number, cost: number) => void;
  /** Called now and then; true ends the search with the best plan so far. */
  shouldStop?: () => Promise<boolean>;
}

const STOP_CHECK_MS = 250;

/**
 * Plans in a thread of its own, so that the process goes on answering.
 *
 * @throws LabError when the planner refuses the problem
 * @throws Error when the search failed, or the judge refuses the plan
 */
export async function planInThread(
  problem: Problem,
  timeMs: number,
  seed: number,
  options: PlanningOptions = {},
): Promise<Plan> {
  const stop = new SharedArrayBuffer(4);
  const thread = new Worker(threadFile(), {
    workerData: {
      ...{ problem, timeMs, seed, stop },
      ...{ rounds: options.rounds ?? null, insert: options.insert ?? null },
    } satisfies Assignment,
  });
  const stopCheck = setInterval(() => void passOnStop(options.shouldStop, stop), STOP_CHECK_MS);
  try {
    return await new Promise<Plan>((resolve, reject) => {
      thread.on('message', (message: ThreadMessage) => {
        if ('plan' in message) {
          options.onEnd?.(message.rounds);
          resolve(message.plan);
        }
        if ('refused' in message) reject(refusalOf(message.refused));
        if ('failed' in message) reject(new Error(message.failed));
        if ('progress' in message) options.onProgress?.(message.progress, message.cost);
      });
      thread.on('error', reject);
      thread.on('exit', (code) => reject(new Error(`The planning thread ended with ${code}.`)));
    });
  } finally {
    clearInterval(stopCheck);
    await thread.terminate();
  }
}

function refusalOf({ code, sentence, facts }: { code: string; sentence: string; facts: Record<string, unknown> }) {
  return new LabError(code, sentence, facts);
}

/** A failing answer, as while the database restarts, does not stop the search. */
async function passOnStop(shouldStop: PlanningOptions['shouldStop'], stop: SharedArrayBuffer): Promise<void> {
  const asked = await shouldStop?.().catch(() => false);
  if (asked) Atomics.store(new Int32Array(stop), 0, 1);
}

/** The thread runs the built file, also when this file runs from its source. */
function threadFile(): string {
  const here = fileURLToPath(import.meta.url);
  if (here.endsWith('.js')) return join(dirname(here), 'plan-thread.js');
  let root = dirname(here);
  while (!existsSync(join(root, 'package.json'))) root = dirname(root);
  return join(root, 'dist', 'apps', 'worker', 'src', 'replan', 'plan-thread.js');
}
