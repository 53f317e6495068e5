import { MOVED_AFTER_MIN } from '#libs/planning/src/index.js';
import type { Booking, Plan, PublishedBooking, Unplaced } from '#libs/planning/src/index.js';
import type { PlanFacts, PlanNotes } from '#libs/records/src/index.js';
import type { PlanningTask } from './problem-of.js';
import type { Words } from './words.js';

interface Context {
  facts: PlanFacts;
  task: PlanningTask;
  plan: Plan;
  words: Words;
  /** Why a job has no place. */
  whyUnplaced: (one: Unplaced) => string[];
}

type Change = NonNullable<PlanNotes['changes']>[number];

/**
 * How the plan differs from the published one, job by job, each with a reason. Jobs that have begun are left out, and so are
 * starts that move by no more than `MOVED_AFTER_MIN`.
 */
export function changesOf(context: Context): Change[] {
  const { task, plan, facts } = context;
  const published = new Map(task.problem.published?.bookings.map((booking) => [booking.jobId, booking]));
  const booked = new Map(plan.bookings.map((booking) => [booking.jobId, booking]));
  if (published.size === 0) return [];
  return facts.jobs
    .filter(({ on }) => on === null)
    .flatMap(({ id }) => changeOf(context, id, published.get(id), booked.get(id)))
    .sort((a, b) => startOf(a) - startOf(b));
}

const startOf = ({ was, is }: Change): number => Date.parse((is ?? was)!.startsAt);

function changeOf(
  context: Context,
  jobId: string,
  was: PublishedBooking | undefined,
  is: Booking | undefined,
): Change[] {
  const place = (one: { frameId: string; startMin: number } | undefined) =>
    one ? { frameTag: context.words.tag(one.frameId), startsAt: context.words.instant(one.startMin) } : null;
  const both = { was: place(was), is: place(is) };
  if (!was) return is ? [{ jobId, ...both, why: 'It is new in the plan.' }] : [];
  if (!is) return [{ jobId, ...both, why: whyGone(context, jobId) }];
  const isMoved = was.frameId !== is.frameId || Math.abs(was.startMin - is.startMin) > MOVED_AFTER_MIN;
  return isMoved ? [{ jobId, ...both, why: whyMoved(context, was, is) }] : [];
}

function whyGone({ plan, whyUnplaced }: Context, jobId: string): string {
  const unplaced = plan.unplaced.find(({ id }) => id === jobId);
  if (!unplaced || unplaced.reason === 'held') return 'It is on hold.';
  return whyUnplaced(unplaced).join(' ');
}

/** The first thing that stands in the way of its published place; otherwise what the plan gains. */
function whyMoved(context: Context, was: PublishedBooking, is: Booking): string {
  const { task, words } = context;
  const job = task.problem.jobs.find(({ id }) => id === is.jobId)!;
  const frame = task.problem.frames.find(({ id }) => id === was.frameId);
  const tag = words.tag(was.frameId);
  const down = frame?.down?.some(({ startMin, endMin }) => startMin < was.startMin + 1 && was.setupStartMin < endMin);
  if (job.pin) return `It is pinned to ${words.tag(job.pin.frameId)}.`;
  if (!job.candidates.some(({ frameId }) => frameId === was.frameId)) return `${tag} can no longer run it.`;
  if (down) return `${tag} is down at the time that was planned.`;
  if (job.releaseMin > was.startMin) return 'Its specimens are ready later than was planned.';
  if (was.setupStartMin < 0) return 'It has not begun when it was planned to.';
  return whatIsThere(context, was, is) ?? whatIsGained(was, is);
}

/** The job that has the frame or a unit at the time that was planned. */
function whatIsThere({ plan, words }: Context, was: PublishedBooking, is: Booking): string | null {
  const others = plan.bookings.filter(
    (other) => other.jobId !== is.jobId && other.setupStartMin <= was.startMin && was.setupStartMin < other.endMin,
  );
  const onFrame = others.find(({ frameId }) => frameId === was.frameId);
  if (onFrame) return `${words.job(onFrame.jobId)} is on ${words.tag(was.frameId)} then.`;
  for (const unit of Object.values(was.items)) {
    const holder = others.find(({ items }) => Object.values(items).includes(unit));
    if (holder) return `${words.tag(unit)} is in use with ${words.job(holder.jobId)} then.`;
  }
  return null;
}

function whatIsGained(was: PublishedBooking, is: Booking): string {
  if (was.frameId === is.frameId && is.startMin < was.startMin) return 'It can begin earlier, and that gains enough.';
  return 'The plan as a whole has less lateness or fewer changeovers this way.';
}
