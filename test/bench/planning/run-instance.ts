import { judgePlan, makePlan } from '#libs/planning/src/index.js';
import type { Plan, Problem, Progress } from '#libs/planning/src/index.js';

/** One run of the engine on one problem. */
export interface Run {
  value: number;
  /** When the last better plan was found, ms. */
  msToBest: number;
  elapsedMs: number;
  rounds: number;
  evaluations: number;
  evaluationsPerSecond: number;
  plan: Plan;
  /** Each better plan: when, ms, and its cost. */
  trace: { ms: number; cost: number }[];
}

/** Runs the engine for so long on one thread and lets the judge look at the plan; throws when it is not correct. */
export function runEngine(problem: Problem, seconds: number, seed: number): Run {
  let last: Progress = { elapsedMs: 0, rounds: 0, evaluations: 0, cost: Infinity };
  let counted = { rounds: 0, evaluations: 0 };
  const trace: Run['trace'] = [];
  const beganMs = performance.now();
  const plan = makePlan(problem, {
    timeMs: seconds * 1000,
    seed,
    now: () => performance.now(),
    onProgress: (progress) => {
      if (progress.cost < (trace.at(-1)?.cost ?? Infinity) - 1e-6)
        trace.push({ ms: progress.elapsedMs, cost: progress.cost });
      last = progress;
    },
    onEnd: (spent) => (counted = spent),
  });
  const elapsedMs = performance.now() - beganMs;
  const breaches = judgePlan(problem, plan);
  if (breaches.length > 0) throw new Error(`the judge refuses the plan: ${JSON.stringify(breaches[0])}`);
  const { rounds, evaluations } = counted.rounds > 0 ? counted : last;
  return {
    value: plan.cost.total,
    msToBest: trace.at(-1)?.ms ?? 0,
    elapsedMs,
    rounds,
    evaluations,
    evaluationsPerSecond: evaluations / (elapsedMs / 1000),
    plan,
    trace,
  };
}
