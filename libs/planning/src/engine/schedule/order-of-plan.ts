import type { Problem, PublishedBooking, PublishedPlan } from '../../problem.js';
import type { Compiled } from './model-of.js';
import type { Order } from './order.js';
import { freeChoice } from './order.js';

/**
 * The order that rebuilds an earlier plan as far as that is still possible: its jobs and visits as they were placed, on the
 * frames that they had. New jobs come after those that are due earlier, on the candidate on which they then end first.
 */
export function orderOfPlan(
  problem: Problem,
  compiled: Compiled,
  { bookings, visits = [], order: placed = [] }: PublishedPlan,
): Order {
  const { model, jobs } = compiled;
  const was = new Map(bookings.map((booking) => [booking.jobId, booking]));
  const visitStarts = new Map(visits.map((visit) => [visit.visitId, visit.startMin]));
  const candidate = Int32Array.from(jobs, (job, j) => candidateLike(problem, compiled, j, was.get(job.id)));
  const keys = new Float64Array(model.jobs + model.visits);
  jobs.forEach((job, j) => (keys[j] = was.get(job.id)?.setupStartMin ?? Math.max(0, job.dueMin - 1440)));
  problem.visits.forEach(({ id, earliestMin }, v) => (keys[model.jobs + v] = visitStarts.get(id) ?? earliestMin));
  const byTime = [...keys.keys()].sort((a, b) => keys[a]! - keys[b]! || a - b);
  const ids = [...jobs, ...problem.visits].map(({ id }) => id);
  return freeChoice(model, Int32Array.from(asPlaced(byTime, ids, placed)), candidate, true);
}

/** Tasks in the order in which they were placed; each new one directly behind the task before it in time. */
function asPlaced(byTime: readonly number[], ids: readonly string[], placed: readonly string[]): number[] {
  const rank = new Map(placed.map((id, at) => [id, at]));
  let latest = -1;
  const ranked = byTime.map((task) => {
    const own = rank.get(ids[task]!);
    if (own !== undefined) latest = Math.max(latest, own);
    return { task, rank: own ?? latest + 0.5 };
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ task }) => task);
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
