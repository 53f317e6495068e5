import type { FitView } from '#libs/contract/src/index.js';
import type { BookingEntity, Fits, PlanAround, PlanNotes } from '#libs/records/src/index.js';
import { notesOf } from './plan-view.js';

const ON_A_FRAME = ['taken', 'rigged', 'running', 'paused'];

interface Plan {
  bookings: readonly Pick<BookingEntity, 'jobId' | 'why'>[];
  notes: PlanNotes;
  around: PlanAround;
  startsAt?: string | undefined;
}

/**
 * For each frame whether a job could be put there, by what matching said when the plan was made and by what is known of
 * the frame at that time. Whether other jobs can make room is for the planner to say.
 */
export function fitsOf(jobId: string, { bookings, notes, around, startsAt }: Plan): FitView[] {
  const booking = bookings.find((row) => row.jobId === jobId);
  const fits = booking ? notesOf(booking).fits : (notes.unplaced.find((row) => row.jobId === jobId)?.fits ?? {});
  const state = around.jobs.get(jobId)?.job.state ?? 'waiting';
  return around.frames.map(({ id, tag }) => {
    const reasons = ON_A_FRAME.includes(state)
      ? [`The job is ${state}: it stays where it is until it is paused and given back.`]
      : [...matched(fits, id, tag), ...away(around, id, tag, startsAt)];
    return { frameId: id, fits: reasons.length === 0, reasons };
  });
}

function matched(fits: Fits, frameId: string, tag: string): string[] {
  return fits[frameId] ?? [`The plan knows no load train for it on ${tag} yet; make a new plan first.`];
}

function away({ windows }: PlanAround, frameId: string, tag: string, startsAt: string | undefined): string[] {
  if (startsAt === undefined) return [];
  const at = Date.parse(startsAt);
  if (at < Date.now() - 60_000) return ['The start lies in the past.'];
  return windows
    .filter(
      (row) =>
        row.itemId === frameId &&
        row.kind !== 'extra-shift' &&
        row.startsAt.getTime() <= at &&
        at < row.endsAt.getTime(),
    )
    .map(({ why, endsAt }) => `${tag} is down until ${endsAt.toISOString()}${why ? `: ${why}` : ''}.`);
}
