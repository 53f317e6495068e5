import { refuseFlaws } from '../check-problem.js';
import type { Plan } from '../plan.js';
import type { Problem } from '../problem.js';
import { Budget } from './budget.js';
import type { Limits } from './budget.js';
import { compile } from './schedule/model-of.js';
import { orderOfPlan } from './schedule/order-of-plan.js';
import { planOf } from './schedule/plan-of.js';
import { Schedule } from './schedule/schedule.js';

/** So many places along the order are tried for a job. */
const MOST_PLACES = 60;

/**
 * The published plan with new jobs in it: one after the other, each where the plan then costs least. All other jobs keep their
 * order, so the answer is quick, and shows what the new jobs push back rather than a different plan.
 *
 * @param jobIds jobs of the problem that the published plan does not have
 * @throws LabError `plan/flawed-problem` as `makePlan` does
 */
export function insertJobs(problem: Problem, jobIds: readonly string[], limits: Limits): Plan {
  refuseFlaws(problem);
  const budget = new Budget(limits);
  const compiled = compile(problem);
  const schedule = new Schedule(compiled.model);
  schedule.load(orderOfPlan(problem, compiled, problem.published ?? { bookings: [] }));
  for (const id of jobIds) {
    const job = compiled.jobs.findIndex((one) => one.id === id);
    if (job >= 0) insertBest(schedule, job, budget);
  }
  return planOf(problem, compiled, schedule);
}

interface Place {
  place: number;
  candidate: number;
}

function insertBest(schedule: Schedule, job: number, budget: Budget): void {
  const { model } = schedule;
  const step = Math.max(1, Math.ceil(schedule.tasks / MOST_PLACES));
  let least = schedule.cost;
  let best: Place = { place: schedule.place[job]!, candidate: schedule.candidate[job]! };
  for (let place = 0; place < schedule.tasks; place += step) {
    for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++) {
      if (budget.isSpent()) return settleAt(schedule, job, best);
      budget.rounds++;
      const cost = costAt(schedule, job, { place, candidate: c }, least);
      if (cost >= least) continue;
      least = cost;
      best = { place, candidate: c };
    }
  }
  settleAt(schedule, job, best);
}

/** What the schedule would cost with the job at another place; Infinity once it is surely not below `limit`. */
function costAt(schedule: Schedule, job: number, { place, candidate }: Place, limit: number): number {
  const was: Place = { place: schedule.place[job]!, candidate: schedule.candidate[job]! };
  schedule.candidate[job] = candidate;
  schedule.shift(was.place, place);
  const cost = schedule.evaluate(Math.min(place, was.place, schedule.putAt[job]!), limit, job, job);
  schedule.shift(place, was.place);
  schedule.candidate[job] = was.candidate;
  return cost;
}

function settleAt(schedule: Schedule, job: number, { place, candidate }: Place): void {
  const from = schedule.place[job]!;
  schedule.candidate[job] = candidate;
  schedule.shift(from, place);
  schedule.settle(Math.min(from, place, schedule.putAt[job]!));
}
