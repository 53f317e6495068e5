import type { Plan } from '../plan.js';

/** How one plan differs from another, min; positive is later, or more. */
export interface PlanDifference {
  weightedLateMin: number;
  lateJobs: number;
  changeoverMin: number;
  later: { jobId: string; minutes: number }[];
  earlier: { jobId: string; minutes: number }[];
  otherFrame: { jobId: string; from: string; to: string }[];
  /** Jobs that are in one of them only. */
  added: string[];
  gone: string[];
}

/** What changes for every job when `after` is taken instead of `before`; the largest shifts first. */
export function comparePlans(before: Plan, after: Plan): PlanDifference {
  const old = new Map(before.bookings.map((booking) => [booking.jobId, booking]));
  const both = after.bookings.flatMap((now) => {
    const was = old.get(now.jobId);
    return was ? [{ jobId: now.jobId, was, now, minutes: now.endMin - was.endMin }] : [];
  });
  const shifts = both
    .map(({ jobId, minutes }) => ({ jobId, minutes }))
    .sort((a, b) => Math.abs(b.minutes) - Math.abs(a.minutes));
  const inAfter = new Set(after.bookings.map(({ jobId }) => jobId));
  return {
    weightedLateMin: after.cost.weightedLateMin - before.cost.weightedLateMin,
    lateJobs: after.cost.lateJobs - before.cost.lateJobs,
    changeoverMin: after.cost.changeoverMin - before.cost.changeoverMin,
    later: shifts.filter(({ minutes }) => minutes > 0),
    earlier: shifts.filter(({ minutes }) => minutes < 0),
    otherFrame: both
      .filter(({ was, now }) => was.frameId !== now.frameId)
      .map(({ jobId, was, now }) => ({ jobId, from: was.frameId, to: now.frameId })),
    added: after.bookings.filter(({ jobId }) => !old.has(jobId)).map(({ jobId }) => jobId),
    gone: before.bookings.filter(({ jobId }) => !inAfter.has(jobId)).map(({ jobId }) => jobId),
  };
}
