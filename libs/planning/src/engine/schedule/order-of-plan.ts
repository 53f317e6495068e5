import type { BookedVisit } from '../../plan.js';
import type { Problem, PublishedBooking } from '../../problem.js';
import type { Compiled } from './model-of.js';
import type { Order } from './order.js';
import { freeChoice } from './order.js';

/**
 * The order that rebuilds an earlier plan as far as it still can be: its jobs by the start of their setup, on the frames that
 * they had; new jobs come after those that are due earlier, and take the candidate on which they then end first.
 */
export function orderOfPlan(
  problem: Problem,
  compiled: Compiled,
  bookings: readonly PublishedBooking[],
  visits: readonly BookedVisit[] = [],
): Order {
  const { model, jobs } = compiled;
  const was = new Map(bookings.map((booking) => [booking.jobId, booking]));
  const went = new Map(visits.map((visit) => [visit.visitId, visit.startMin]));
  const candidate = Int32Array.from(jobs, (job, j) => candidateLike(problem, compiled, j, was.get(job.id)));
  const keys = new Float64Array(model.jobs + model.visits);
  jobs.forEach((job, j) => (keys[j] = was.get(job.id)?.setupStartMin ?? Math.max(0, job.dueMin - 1440)));
  problem.visits.forEach(({ id, earliestMin }, v) => (keys[model.jobs + v] = went.get(id) ?? earliestMin));
  const order = Int32Array.from(keys.keys()).sort((a, b) => keys[a]! - keys[b]! || a - b);
  return freeChoice(model, order, candidate);
}

/** The candidate of a job on the frame that a booking names, with pools that hold its units; −1 when there is none. */
function candidateLike(
  problem: Problem,
  { model, jobs }: Compiled,
  j: number,
  booking: PublishedBooking | undefined,
): number {
  if (!booking) return -1;
  let onFrame = -1;
  for (let c = model.candidateAt[j]!; c < model.candidateAt[j + 1]!; c++) {
    if (problem.frames[model.candidateFrame[c]!]!.id !== booking.frameId) continue;
    const { links } = jobs[j]!.candidates[model.candidateIndex[c]!]!;
    if (links.every(({ link, pool }) => pool.includes(booking.items[link] ?? ''))) return c;
    onFrame = c;
  }
  return onFrame;
}
