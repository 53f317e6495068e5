import { refuseFlaws } from '../check-problem.js';
import type { Plan } from '../plan.js';
import type { Problem } from '../problem.js';
import { Budget } from './budget.js';
import type { Limits } from './budget.js';
import { sequenceModelOf } from './sequences/model-of.js';
import type { SequenceSolution } from './sequences/model.js';
import { searchSequences } from './sequences/search.js';
import { withoutPlenty } from './sequences/without-plenty.js';
import { Random } from './random.js';
import type { Compiled } from './schedule/model-of.js';
import { compile } from './schedule/model-of.js';
import { orderOfPlan } from './schedule/order-of-plan.js';
import type { Order } from './schedule/order.js';
import { planOf } from './schedule/plan-of.js';
import { searchSchedules } from './schedule/search.js';

/** Default wall time where a clock is given, ms. */
const USUAL_TIME_MS = 2000;

export interface PlanOptions extends Limits {
  /** The same problem, seed and `iterations` give the same plan. */
  seed?: number;
  /** Called with each better plan. */
  onProgress?: (progress: Progress) => void;
  /** Called once, with what the search did. */
  onEnd?: (spent: Pick<Progress, 'rounds' | 'evaluations'>) => void;
}

export interface Progress {
  elapsedMs: number;
  rounds: number;
  evaluations: number;
  /** What the search minimises. The plan's own cost may add what nobody can change, such as running jobs that are late. */
  cost: number;
}

/**
 * The best plan found within the limits. What found no place is listed in it with the reason.
 * Needs `iterations`, or `timeMs` (default 2000) with `now`.
 *
 * @throws LabError `plan/flawed-problem` naming each impossible or missing figure of the problem
 */
export function makePlan(problem: Problem, options: PlanOptions): Plan {
  refuseFlaws(problem);
  const budget = new Budget(
    options.iterations === undefined ? { ...options, timeMs: options.timeMs ?? USUAL_TIME_MS } : options,
  );
  const plan = search(problem, options, budget);
  options.onEnd?.({ rounds: budget.rounds, evaluations: budget.evaluations });
  return plan;
}

function search(problem: Problem, options: PlanOptions, budget: Budget): Plan {
  const random = new Random(options.seed ?? 1);
  const report = (cost: number, evaluations: number): void =>
    options.onProgress?.({ elapsedMs: budget.elapsedMs(), rounds: budget.rounds, evaluations, cost });
  const compiled = compile(problem);
  const sequences = sequenceModelOf(withoutPlenty(problem));
  if (sequences) {
    const found = searchSequences(sequences, budget, random, ({ value }, evaluations) => report(value, evaluations));
    const plan = planOf(problem, compiled, orderOf(compiled, found));
    if (plan.cost.unplaced === 0) return plan;
  }
  const known = problem.published && orderOfPlan(problem, compiled, problem.published);
  return planOf(
    problem,
    compiled,
    searchSchedules(compiled.model, budget, random, known, (_, cost, evaluations) => report(cost, evaluations)),
  );
}

/** Sequences as an order of tasks, frame by frame. */
function orderOf({ model }: Compiled, found: SequenceSolution): Order {
  const candidate = new Int32Array(model.jobs);
  found.sequences.forEach((jobs, frame) => {
    for (const job of jobs) {
      for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++)
        if (model.candidateFrame[c] === frame) candidate[job] = c;
    }
  });
  return { order: Int32Array.from(found.sequences.flat()), candidate };
}
