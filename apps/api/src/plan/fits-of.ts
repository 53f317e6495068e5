import { sayInstant } from '#libs/calendar/src/index.js';
import type { TimeWindow, WorkCalendar } from '#libs/calendar/src/index.js';
import type { FitView } from '#libs/contract/src/index.js';
import type {
  BookingEntity,
  Fits,
  ItemEntity,
  ItemWindowEntity,
  PlanAround,
  PlanNotes,
  TrialPlanEntity,
} from '#libs/records/src/index.js';
import { closedThen, hoursFrom } from './frame-hours.js';
import { notesOf } from './plan-view.js';

const ON_A_FRAME = ['taken', 'rigged', 'running', 'paused'];

/** A span of time in which a frame is away, or open longer. */
export type FrameWindow = Pick<ItemWindowEntity, 'itemId' | 'kind' | 'startsAt' | 'endsAt' | 'why'>;

interface Plan {
  bookings: readonly Pick<BookingEntity, 'jobId' | 'why'>[];
  notes: PlanNotes;
  around: Pick<PlanAround, 'frames' | 'jobs'> & { windows: readonly FrameWindow[] };
  /** The lab's week and its closed days. */
  calendar: WorkCalendar;
  startsAt?: string | undefined;
  /** UTC, ms. */
  nowMs: number;
}

/**
 * For each frame whether a job could be put there, by what matching said when the plan was made and by what is known of
 * the frame at that time. Whether other jobs can make room is for the planner to say.
 */
export function fitsOf(jobId: string, { bookings, notes, around, calendar, startsAt, nowMs }: Plan): FitView[] {
  const booking = bookings.find((row) => row.jobId === jobId);
  const fits = booking ? notesOf(booking).fits : (notes.unplaced.find((row) => row.jobId === jobId)?.fits ?? {});
  const state = around.jobs.get(jobId)?.job.state ?? 'waiting';
  const away = awayAt(around.windows, calendar, startsAt, nowMs);
  return around.frames.map((frame) => {
    const { id, tag } = frame;
    const reasons = ON_A_FRAME.includes(state)
      ? [`The job is ${state}: it stays where it is until it is paused and given back.`]
      : [...matched(fits, id, tag), ...away(frame)];
    return { frameId: id, fits: reasons.length === 0, reasons };
  });
}

function matched(fits: Fits, frameId: string, tag: string): string[] {
  return fits[frameId] ?? [`The plan knows no load train for it on ${tag} yet; make a new plan first.`];
}

/** Says of a frame why nothing can start there at that time: the lab's hours are laid out once for all frames. */
function awayAt(windows: readonly FrameWindow[], calendar: WorkCalendar, startsAt: string | undefined, nowMs: number) {
  if (startsAt === undefined) return () => [];
  const at = Date.parse(startsAt);
  if (at < nowMs - 60_000) return () => ['The start lies in the past.'];
  const [hours, { zone }] = [hoursFrom(calendar, at), calendar];
  return ({ id, tag }: Pick<ItemEntity, 'id' | 'tag'>): string[] => {
    const ofFrame = windows.filter(({ itemId }) => itemId === id);
    const extra = ofFrame.filter(({ kind }) => kind === 'extra-shift').map(spanOf);
    return [
      ...closedThen(tag, at, { hours, extra, zone }),
      ...ofFrame
        .filter((row) => row.kind !== 'extra-shift' && row.startsAt.getTime() <= at && at < row.endsAt.getTime())
        .map(
          ({ why, endsAt }) => `${tag} is down until ${sayInstant(endsAt.getTime(), zone)}${why ? `: ${why}` : ''}.`,
        ),
    ];
  };
}

function spanOf({ startsAt, endsAt }: FrameWindow): TimeWindow {
  return { startMs: startsAt.getTime(), endMs: endsAt.getTime() };
}

/** A frame that a trial plan opens longer takes jobs in those hours too. */
export function extraShiftsOf({ edits }: Pick<TrialPlanEntity, 'edits'>): FrameWindow[] {
  return edits.flatMap((edit) =>
    edit.kind === 'extra-shift'
      ? [
          {
            ...{ itemId: edit.frameId, kind: edit.kind, why: '' },
            ...{ startsAt: new Date(edit.startsAt), endsAt: new Date(edit.endsAt) },
          },
        ]
      : [],
  );
}
