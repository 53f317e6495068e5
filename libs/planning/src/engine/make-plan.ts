import type { Plan } from '../plan.js';
import type { Problem } from '../problem.js';
import { Budget } from './budget.js';
import type { Limits } from './budget.js';
import { laneModelOf } from './lanes/model-of.js';
import type { LaneResult } from './lanes/search.js';
import { searchLanes } from './lanes/search.js';
import { Random } from './random.js';
import type { Compiled } from './timetable/model-of.js';
import { compile } from './timetable/model-of.js';
import { orderOfPlan } from './timetable/order-of-plan.js';
import type { Order } from './timetable/orders.js';
import { ORDER_RULES } from './timetable/orders.js';
import { planOf } from './timetable/plan-of.js';
import { searchTimetables } from './timetable/search.js';

/** Wall time unless told otherwise, ms, where a clock is given. */
const USUAL_TIME_MS = 2000;

export interface PlanOptions extends Limits {
  /** The same problem, seed and `iterations` give the same plan. */
  seed?: number;
  /** Told of each better plan. */
  onProgress?: (progress: Progress) => void;
  /** Told once how much was looked at. */
  onEnd?: (spent: Pick<Progress, 'rounds' | 'evaluations'>) => void;
}

export interface Progress {
  elapsedMs: number;
  rounds: number;
  evaluations: number;
  /** What the search makes small; the plan's own cost may count more that nobody can change. */
  cost: number;
}

/**
 * The best plan found within the limits, from a checked problem (`checkProblem`). It always answers with a plan; what found no
 * place is listed in it with the reason. Needs `iterations`, or `timeMs` (default 2000) with `now`.
 */
export function makePlan(problem: Problem, options: PlanOptions): Plan {
  const budget = new Budget(
    options.iterations === undefined ? { ...options, timeMs: options.timeMs ?? USUAL_TIME_MS } : options,
  );
  const plan = search(problem, options, budget);
  options.onEnd?.({ rounds: budget.rounds, evaluations: budget.evaluations });
  return plan;
}

function search(problem: Problem, options: PlanOptions, budget: Budget): Plan {
  const random = new Random(options.seed ?? 1);
  const tell = (cost: number, evaluations: number): void =>
    options.onProgress?.({ elapsedMs: budget.elapsedMs(), rounds: budget.rounds, evaluations, cost });
  const compiled = compile(problem);
  const lanes = laneModelOf(problem);
  if (lanes) {
    const found = searchLanes(lanes, budget, random, ({ value }, evaluations) => tell(value, evaluations));
    const plan = planOf(problem, compiled, orderOf(compiled, found));
    if (plan.cost.unplaced === 0) return plan;
  }
  const known = problem.published && orderOfPlan(problem, compiled, problem.published.bookings);
  return planOf(
    problem,
    compiled,
    searchTimetables(compiled.model, budget, random, known, (_, cost, evaluations) => tell(cost, evaluations)),
  );
}

/** Dispatch rules by name, each of which makes a correct plan at once, without search. */
export const CONSTRUCTION_RULES: readonly string[] = ORDER_RULES.map(({ name }) => name);

/**
 * The plan of one dispatch rule: jobs in the rule's order, each where it then ends first.
 *
 * @param rule one of `CONSTRUCTION_RULES`
 */
export function construct(problem: Problem, rule = CONSTRUCTION_RULES[0]!): Plan {
  const compiled = compile(problem);
  return planOf(
    problem,
    compiled,
    (ORDER_RULES.find(({ name }) => name === rule) ?? ORDER_RULES[0]!).order(compiled.model),
  );
}

/** Sequences as an order of tasks, frame by frame. */
function orderOf({ model }: Compiled, found: LaneResult): Order {
  const candidate = new Int32Array(model.jobs);
  found.lanes.forEach((jobs, frame) => {
    for (const job of jobs) {
      for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++)
        if (model.candidateFrame[c] === frame) candidate[job] = c;
    }
  });
  return { order: Int32Array.from(found.lanes.flat()), candidate };
}
