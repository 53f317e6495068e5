import type { Booking, Plan } from '../plan.js';
import type { Job, Problem, Window } from '../problem.js';
import { workingWindows } from '../windows.js';
import { sumWithin } from './load-by-frame.js';

export type CauseKind =
  'release' | 'frame-busy' | 'item-busy' | 'calibration' | 'changeover' | 'closed' | 'technician' | 'work' | 'pin';

/** One stretch of the time from now to the end of a late job, and what it went to, min. */
export interface Cause {
  kind: CauseKind;
  minutes: number;
  /** The job that was in the way, where there is one. */
  jobId: string | null;
  /** The unit that was waited for, where there is one. */
  itemId: string | null;
}

/**
 * What a job spent its time on from minute 0 until it ends, from first to last: the chain of causes when that is too late.
 * The stretches follow each other without gaps, so that their sum is the whole time; stretches under a minute are left out.
 *
 * @returns nothing for a job that is not booked, or that ends in time
 */
export function causesOfLateness(problem: Problem, plan: Plan, jobId: string): Cause[] {
  const job = problem.jobs.find(({ id }) => id === jobId);
  const booking = plan.bookings.find((one) => one.jobId === jobId);
  if (!job || !booking || booking.endMin <= job.dueMin) return [];
  const waited = waitingCauses(problem, plan, job, booking);
  const { setupStartMin, setupMin, startMin, endMin } = booking;
  const setup = sumWithin(setupStints(booking), { startMin: 0, endMin });
  const worked = sumWithin(workStints(booking), { startMin: 0, endMin });
  const closed = endMin - Math.max(0, setupStartMin) - setup - worked;
  const beforeWork = startMin - setupStartMin - setupMin;
  return [
    ...waited,
    cause('changeover', setup),
    cause('closed', Math.max(0, closed - Math.max(0, beforeWork))),
    cause('technician', Math.max(0, beforeWork)),
    cause('work', worked),
  ].filter(({ minutes }) => minutes >= 1);
}

/** Why it did not begin at once: what kept its frame and units busy until its start, in the order of time. */
function waitingCauses(problem: Problem, plan: Plan, job: Job, booking: Booking): Cause[] {
  const released = Math.max(0, job.releaseMin);
  const begin = Math.max(0, booking.setupStartMin);
  if (begin <= released) return [cause('release', Math.min(begin, released))];
  const causes = [cause('release', released)];
  let at = released;
  while (at < begin) {
    const next = whatStands(problem, plan, booking, at, begin);
    causes.push({ ...next.cause, minutes: next.untilMin - at });
    at = next.untilMin;
  }
  return merged(
    job.pin?.startMin != null && causes.every(({ kind }) => kind !== 'frame-busy')
      ? [causes[0]!, cause('pin', begin - released)]
      : causes,
  );
}

/** What stood in the way at a minute, and until when. */
function whatStands(
  problem: Problem,
  plan: Plan,
  booking: Booking,
  at: number,
  begin: number,
): { untilMin: number; cause: Cause } {
  const onFrame = plan.bookings.find(
    (other) => other !== booking && other.frameId === booking.frameId && covers(other, at),
  );
  if (onFrame) return { untilMin: Math.min(begin, onFrame.endMin), cause: cause('frame-busy', 0, onFrame.jobId) };
  for (const unit of Object.values(booking.items)) {
    const holder = plan.bookings.find(
      (other) => other !== booking && Object.values(other.items).includes(unit) && covers(other, at),
    );
    if (holder) return { untilMin: Math.min(begin, holder.endMin), cause: cause('item-busy', 0, holder.jobId, unit) };
    const visit = plan.visits.find((one) => one.itemId === unit && one.startMin <= at && at < one.endMin);
    if (visit) return { untilMin: Math.min(begin, visit.endMin), cause: cause('calibration', 0, null, unit) };
  }
  const frame = problem.frames.find(({ id }) => id === booking.frameId)!;
  const open = workingWindows(frame);
  const isOpen = open.some((window) => window.startMin <= at && at < window.endMin);
  const changes = [
    ...edges(open),
    ...plan.bookings.filter((other) => other !== booking).map(({ setupStartMin }) => setupStartMin),
  ];
  const untilMin = Math.min(begin, ...changes.filter((minute) => minute > at));
  return { untilMin, cause: cause(isOpen ? 'technician' : 'closed', 0) };
}

const covers = (booking: Booking, at: number): boolean => booking.setupStartMin <= at && at < booking.endMin;
const edges = (windows: readonly Window[]): number[] => windows.flatMap(({ startMin, endMin }) => [startMin, endMin]);
const setupStints = ({ stints }: Booking): Window[] => stints.filter(({ kind }) => kind === 'setup');
const workStints = ({ stints }: Booking): Window[] => stints.filter(({ kind }) => kind === 'work');

function cause(kind: CauseKind, minutes: number, jobId: string | null = null, itemId: string | null = null): Cause {
  return { kind, minutes, jobId, itemId };
}

/** Neighbours of one kind with one culprit are one stretch. */
function merged(causes: readonly Cause[]): Cause[] {
  const joined: Cause[] = [];
  for (const next of causes) {
    const last = joined.at(-1);
    if (last && last.kind === next.kind && last.jobId === next.jobId && last.itemId === next.itemId)
      last.minutes += next.minutes;
    else joined.push({ ...next });
  }
  return joined;
}
