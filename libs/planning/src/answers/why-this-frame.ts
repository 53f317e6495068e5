import type { Plan } from '../plan.js';
import type { Candidate, Job, Problem } from '../problem.js';

/** How a job would do on one of its frames, beside where it is. */
export interface FrameChoice {
  frameId: string;
  chosen: boolean;
  /** Minutes of changeover that it has there; null where it is not booked. */
  changeoverMin: number | null;
  /** Units of its train that hang on the frame already, when its turn comes. */
  fittedLinks: number;
  links: number;
  /** When the frame has nothing left to do before it, min; for the frame chosen its own setup's start. */
  freeAtMin: number;
}

/**
 * The frames that a job could go to, the chosen one first, with the figures that speak for and against each.
 *
 * @returns nothing for a job that is not booked
 */
export function whyThisFrame(problem: Problem, plan: Plan, jobId: string): FrameChoice[] {
  const job = problem.jobs.find(({ id }) => id === jobId);
  const booking = plan.bookings.find((one) => one.jobId === jobId);
  if (!job || !booking) return [];
  const frames = [...new Set(job.candidates.map(({ frameId }) => frameId))];
  return frames
    .map((frameId) => {
      const chosen = frameId === booking.frameId;
      const candidate = bestCandidate(job, frameId);
      const before = lastBefore(plan, frameId, booking.setupStartMin, jobId);
      const fitted = new Set(Object.values(before?.items ?? rigOf(problem, frameId)));
      return {
        frameId,
        chosen,
        changeoverMin: chosen ? booking.setupMin : null,
        fittedLinks: candidate.links.filter(({ pool }) => pool.some((unit) => fitted.has(unit))).length,
        links: candidate.links.length,
        freeAtMin: chosen ? booking.setupStartMin : busyUntil(plan, frameId, booking.setupStartMin),
      };
    })
    .sort((a, b) => Number(b.chosen) - Number(a.chosen) || a.freeAtMin - b.freeAtMin);
}

const bestCandidate = (job: Job, frameId: string): Candidate => job.candidates.find((one) => one.frameId === frameId)!;

const rigOf = (problem: Problem, frameId: string): Readonly<Record<string, string>> =>
  problem.frames.find(({ id }) => id === frameId)?.rig.items ?? {};

function lastBefore(plan: Plan, frameId: string, minute: number, except: string) {
  return plan.bookings
    .filter((one) => one.frameId === frameId && one.jobId !== except && one.setupStartMin < minute)
    .sort((a, b) => b.setupStartMin - a.setupStartMin)[0];
}

/** When the work that a frame is at, at a minute, is over; that minute when it has none. */
function busyUntil(plan: Plan, frameId: string, minute: number): number {
  const at = plan.bookings.find((one) => one.frameId === frameId && one.setupStartMin <= minute && minute < one.endMin);
  return at?.endMin ?? minute;
}
