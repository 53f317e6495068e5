import { compile } from '../engine/timetable/model-of.js';
import { orderOfPlan } from '../engine/timetable/order-of-plan.js';
import { planOf } from '../engine/timetable/plan-of.js';
import type { Booking, Plan } from '../plan.js';
import type { Frame, Job, Problem } from '../problem.js';
import { windowAround, workingWindows } from '../windows.js';

/** Why a job cannot begin on a frame at a minute with everything else left where it is. */
export interface Obstacle {
  kind:
    | 'running'
    | 'no-train'
    | 'before-release'
    | 'after'
    | 'frame-closed'
    | 'frame-busy'
    | 'item-busy'
    | 'not-in-force'
    | 'pushes'
    | 'later'
    | 'no-room';
  /** The job in the way or pushed away, where there is one. */
  jobId: string | null;
  itemId: string | null;
  /** By how many minutes; 0 where minutes say nothing. */
  byMin: number;
}

export interface MoveAnswer {
  fits: boolean;
  obstacles: Obstacle[];
  /** Where the job would come to lie when everything else kept its order; null when it finds no place. */
  booking: Booking | null;
}

/**
 * Whether a job fits on a frame at a minute while all others stay where they are, and if not, what is in the way. Quick enough
 * to be asked while the job is held over a lane.
 *
 * @param startMin wanted start of the work, min
 */
export function tryMove(problem: Problem, plan: Plan, jobId: string, frameId: string, startMin: number): MoveAnswer {
  const job = problem.jobs.find(({ id }) => id === jobId);
  const frame = problem.frames.find(({ id }) => id === frameId);
  if (!job || !frame || job.running)
    return { fits: false, obstacles: [obstacle('running', job ? jobId : null)], booking: null };
  if (!job.candidates.some((one) => one.frameId === frameId))
    return { fits: false, obstacles: [obstacle('no-train')], booking: null };
  const after = planWith(problem, plan, job, frameId, startMin);
  const booking = after.bookings.find((one) => one.jobId === jobId) ?? null;
  const pushed = pushes(plan, after, jobId);
  const laterMin = booking ? booking.startMin - startMin : 0;
  if (booking && laterMin <= 0 && pushed.length === 0) return { fits: true, obstacles: [], booking };
  const obstacles = [...inTheWay(problem, plan, job, frame, startMin, booking), ...pushed];
  if (obstacles.length === 0) obstacles.push(booking ? obstacle('later', null, null, laterMin) : obstacle('no-room'));
  return { fits: false, obstacles, booking };
}

const obstacle = (
  kind: Obstacle['kind'],
  jobId: string | null = null,
  itemId: string | null = null,
  byMin = 0,
): Obstacle => ({ kind, jobId, itemId, byMin });

/** All other jobs pinned where they are, and this one where it is wanted. */
function planWith(problem: Problem, plan: Plan, job: Job, frameId: string, startMin: number): Plan {
  const start = Math.max(0, Math.round(startMin));
  const others = plan.bookings.filter((one) => one.jobId !== job.id);
  const pinned: Problem = {
    ...problem,
    jobs: problem.jobs.map((one) =>
      one.id === job.id ? { ...one, hold: false, pin: { frameId, startMin: start } } : one,
    ),
    published: { bookings: others },
    freezeUntilMin: problem.horizonMin,
  };
  const compiled = compile(pinned);
  const moved = { jobId: job.id, frameId, setupStartMin: start, startMin: start, items: {} };
  return planOf(pinned, compiled, orderOfPlan(pinned, compiled, [...others, moved], plan.visits));
}

/** Jobs that would no longer be where they are. */
function pushes(before: Plan, after: Plan, except: string): Obstacle[] {
  const now = new Map(after.bookings.map((one) => [one.jobId, one]));
  return before.bookings.flatMap((was) => {
    const is = now.get(was.jobId);
    const byMin = is ? is.endMin - was.endMin : 0;
    return was.jobId === except || (is && byMin <= 0) ? [] : [obstacle('pushes', was.jobId, null, byMin)];
  });
}

function inTheWay(
  problem: Problem,
  plan: Plan,
  job: Job,
  frame: Frame,
  startMin: number,
  booking: Booking | null,
): Obstacle[] {
  const candidate = job.candidates.find((one) => one.frameId === frame.id)!;
  const firstEndMin = startMin + (job.attended === 'throughout' ? candidate.perSpecimenMin : 1);
  const lengthMin = booking ? booking.endMin - booking.startMin : candidate.perSpecimenMin * candidate.specimens;
  const endMin = startMin + lengthMin;
  const others = plan.bookings.filter((one) => one.jobId !== job.id);
  const busy = others.filter((one) => one.frameId === frame.id && one.setupStartMin < endMin && startMin < one.endMin);
  const open = windowAround(workingWindows(frame), startMin, firstEndMin);
  const early = job.releaseMin - startMin;
  const waits = others.filter((one) => job.after.includes(one.jobId) && one.endMin > startMin);
  return [
    ...(early > 0 ? [obstacle('before-release', null, null, early)] : []),
    ...waits.map((one) => obstacle('after', one.jobId, null, one.endMin - startMin)),
    ...(open ? [] : [obstacle('frame-closed')]),
    ...busy.map((one) => obstacle('frame-busy', one.jobId, null, one.endMin - startMin)),
    ...candidate.links.flatMap(({ pool }) => poolInTheWay(problem, others, pool, startMin, endMin)),
  ];
}

/** The unit of a pool that is free again first, when all of them are held or out of force within [startMin, endMin). */
function poolInTheWay(
  problem: Problem,
  others: readonly Booking[],
  pool: readonly string[],
  startMin: number,
  endMin: number,
): Obstacle[] {
  const found: Obstacle[] = [];
  for (const itemId of pool) {
    const usable = problem.items.find(({ id }) => id === itemId)?.usable;
    const holder = others.find(
      (one) => Object.values(one.items).includes(itemId) && one.setupStartMin < endMin && startMin < one.endMin,
    );
    const lasts = !usable || windowAround(usable, startMin, Math.max(startMin + 1, endMin));
    if (!holder && lasts) return [];
    found.push(
      holder
        ? obstacle('item-busy', holder.jobId, itemId, holder.endMin - startMin)
        : obstacle('not-in-force', null, itemId),
    );
  }
  const first = found.sort(
    (a, b) => Number(a.kind === 'not-in-force') - Number(b.kind === 'not-in-force') || a.byMin - b.byMin,
  )[0];
  return first ? [first] : [];
}
