import { compile } from '../engine/timetable/model-of.js';
import { orderOfPlan } from '../engine/timetable/order-of-plan.js';
import { planOf } from '../engine/timetable/plan-of.js';
import { Tour } from '../engine/timetable/tour.js';
import type { Booking, Plan } from '../plan.js';
import type { Job, Problem } from '../problem.js';

/** Places in the order that are tried; more are not worth the wait. */
const MOST_PLACES = 60;

export interface Landing {
  /** Null when it finds no place in the horizon. */
  booking: Booking | null;
  /** The plan with it. */
  plan: Plan;
  /** What it adds to the cost of the plan. */
  addedCost: number;
}

/**
 * Where a job would land if it came now: tried at places all along the plan in force, the others keeping their order, and put
 * where the plan then costs least.
 *
 * @param job not among the jobs of the problem
 */
export function whereWouldItLand(problem: Problem, plan: Plan, job: Job): Landing {
  const asked: Problem = { ...problem, jobs: [...problem.jobs, job] };
  const compiled = compile(asked);
  const { order, candidate } = orderOfPlan(asked, compiled, plan.bookings, plan.visits);
  const newest = compiled.jobs.length - 1;
  const isPlanned = compiled.jobs[newest]?.id === job.id;
  const tour = new Tour(compiled.model);
  tour.load(order, candidate);
  if (isPlanned) settleBest(tour, newest);
  const landed = planOf(asked, compiled, tour);
  const booking = landed.bookings.find(({ jobId }) => jobId === job.id) ?? null;
  return { booking, plan: landed, addedCost: landed.cost.total - plan.cost.total };
}

function settleBest(tour: Tour, job: number): void {
  const { model } = tour;
  const step = Math.max(1, Math.ceil(tour.tasks / MOST_PLACES));
  let best = { cost: tour.cost, place: tour.place[job]!, candidate: tour.candidate[job]! };
  for (let place = 0; place < tour.tasks; place += step) {
    for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++) {
      const was = { place: tour.place[job]!, candidate: tour.candidate[job]! };
      const first = Math.min(place, was.place, tour.putAt[job]!);
      tour.candidate[job] = c;
      tour.shift(was.place, place);
      const cost = tour.evaluate(first, best.cost, job, job);
      if (cost < best.cost) best = { cost, place, candidate: c };
      tour.shift(place, was.place);
      tour.candidate[job] = was.candidate;
    }
  }
  const from = tour.place[job]!;
  tour.candidate[job] = best.candidate;
  tour.shift(from, best.place);
  tour.settle(Math.min(from, best.place, tour.putAt[job]!));
}
