import { calendarOf, MS_PER_DAY, MS_PER_HOUR, openWindows, subtractWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';
import type { BookingView, LabSettings, LaneView, LateView, PlanView } from '#libs/contract/src/index.js';
import type { FrameDetails } from '#libs/matching/src/index.js';
import { NO_NOTES } from '#libs/records/src/index.js';
import type {
  BookingEntity,
  BookingNotes,
  ItemEntity,
  NamedJob,
  PlanAround,
  PlanNotes,
} from '#libs/records/src/index.js';

/** A chance of being late from which a job counts as at risk, percent. */
const AT_RISK_PCT = 20;

/** A booking, published or of a trial. */
export type AnyBooking = Omit<BookingEntity, 'planId' | 'live'>;

export interface PlanHead {
  id: string;
  version: number;
  publishedAt: Date;
  madeBy: string;
  cause: string;
  stale: boolean;
}

interface Parts {
  head: PlanHead;
  notes: PlanNotes;
  /** The published plan whose changes are told; without it the plan's own are. */
  moved?: { version: number; publishedAt: Date; notes: PlanNotes } | null;
  bookings: readonly AnyBooking[];
  around: PlanAround;
  settings: LabSettings;
  closedDays: readonly string[];
  nowMs: number;
}

/** Everything that the manager's lanes show of a plan. */
export function planView(parts: Parts): PlanView {
  const { notes, around, nowMs, moved } = parts;
  const { id, version, publishedAt, madeBy, cause, stale } = parts.head; // a row has more than is shown
  const bookings = parts.bookings.map((booking) => bookingView(booking, around));
  return {
    ...{ id, version, madeBy, cause, stale },
    publishedAt: publishedAt.toISOString(),
    figures: notes.figures,
    horizon: { from: new Date(nowMs).toISOString(), to: notes.horizonTo },
    freezeUntil: notes.freezeUntil,
    lanes: lanesOf(parts, bookings),
    visits: bookings.filter(({ kind }) => kind === 'calibration-visit'),
    late: lateOf(parts, bookings),
    unplaced: notes.unplaced.flatMap(({ jobId, reasons }) => named(around, jobId, (job) => ({ ...job, reasons }))),
    held: [...around.jobs.values()]
      .filter(({ job }) => job.holdWhy !== null)
      .flatMap(({ job }) => named(around, job.id, (names) => ({ ...names, why: job.holdWhy! }))),
    pools: notes.pools,
    changes: ((moved?.notes ?? notes).changes ?? []).flatMap(({ jobId, ...change }) =>
      named(around, jobId, (job) => ({ ...job, ...change })),
    ),
    changedBy: moved ? { version: moved.version, publishedAt: moved.publishedAt.toISOString() } : null,
  };
}

function named<Row>(around: PlanAround, jobId: string, row: (names: Names) => Row): Row[] {
  const found = around.jobs.get(jobId);
  return found ? [row(namesOf(found))] : [];
}

type Names = ReturnType<typeof namesOf>;

function namesOf({ job, title }: NamedJob) {
  return { jobId: job.id, jobReference: job.reference, requestId: job.requestId, title };
}

function bookingView(booking: AnyBooking, { jobs, tags }: PlanAround): BookingView {
  const found = booking.jobId === null ? undefined : jobs.get(booking.jobId);
  return {
    id: booking.id,
    kind: booking.kind,
    jobId: booking.jobId,
    jobReference: found?.job.reference ?? null,
    requestId: found?.job.requestId ?? null,
    requestReference: found?.requestReference ?? null,
    title: found?.title ?? `Calibration of ${booking.train.map(({ itemId }) => tags.get(itemId) ?? itemId).join(', ')}`,
    state: found?.job.state ?? null,
    frameId: booking.frameId,
    setupAt: booking.setupAt.toISOString(),
    startsAt: booking.startsAt.toISOString(),
    endsAt: booking.endsAt.toISOString(),
    changeoverMin: booking.changeoverMin,
    dueAt: found?.dueAt?.toISOString() ?? null,
    lateHours: lateHoursAt(booking.endsAt, found?.dueAt ?? null),
    pinned: found?.job.pinFrameId != null,
    technicianId: booking.technicianId,
    train: booking.train.map(({ role, itemId }) => ({ role, itemId, tag: tags.get(itemId) ?? '' })),
  };
}

function lateHoursAt(endsAt: Date, dueAt: Date | null): number {
  return dueAt === null ? 0 : Math.max(0, (endsAt.getTime() - dueAt.getTime()) / MS_PER_HOUR);
}

function lanesOf({ around, notes, settings, closedDays, nowMs }: Parts, bookings: readonly BookingView[]): LaneView[] {
  const toMs = Date.parse(notes.horizonTo);
  const hours = openWindows(calendarOf(settings, closedDays), nowMs - MS_PER_DAY, toMs);
  const always = hours.map(spanView); // most frames are never down
  return around.frames.map((frame) => {
    const state = around.faults.has(frame.id) ? 'faulty' : frame.state;
    const inService = state === 'in-service';
    const { tensionCapacityN, compressionCapacityN, torqueCapacityNm } = frame.details as FrameDetails;
    const down = around.windows.filter(({ itemId }) => itemId === frame.id);
    const closed = down.map(({ startsAt, endsAt }) => ({ startMs: startsAt.getTime(), endMs: endsAt.getTime() }));
    return {
      frame: {
        id: frame.id,
        tag: frame.tag,
        name: frame.name,
        capacityN: tensionCapacityN || compressionCapacityN || null,
        torqueNm: torqueCapacityNm || null,
        state,
      },
      open: inService ? (closed.length === 0 ? always : subtractWindows(hours, closed).map(spanView)) : [],
      down: [
        ...(inService ? [] : [outOfService(frame, around, nowMs, notes.horizonTo)]),
        ...down.map(({ id, kind, startsAt, endsAt, why }) => ({
          ...{ id, kind, why },
          startsAt: startsAt.toISOString(),
          endsAt: endsAt.toISOString(),
        })),
      ],
      bookings: bookings.filter(({ frameId }) => frameId === frame.id),
      load: notes.load.find(({ frameId }) => frameId === frame.id)?.weeks ?? [],
    };
  });
}

/** A frame out of service is closed as far as the plan goes, because nobody has said when it comes back. */
function outOfService(
  { id, tag, state }: ItemEntity,
  { faults }: PlanAround,
  nowMs: number,
  horizonTo: string,
): LaneView['down'][number] {
  const fault = faults.get(id);
  const kind = fault ? 'faulty' : state;
  const why = fault
    ? `${tag} has an open fault: ${fault}`
    : `${tag} is ${state === 'faulty' ? 'faulty' : 'out of use'}`;
  return { id, kind, why, startsAt: new Date(nowMs - MS_PER_DAY).toISOString(), endsAt: horizonTo };
}

function spanView({ startMs, endMs }: TimeWindow): LaneView['open'][number] {
  return { startsAt: new Date(startMs).toISOString(), endsAt: new Date(endMs).toISOString() };
}

function lateOf(parts: Parts, views: readonly BookingView[]): LateView[] {
  const { bookings, around } = parts;
  const planned = bookings
    .flatMap((booking, index) => {
      const view = views[index]!;
      const { causes, riskPct } = notesOf(booking);
      if (view.jobId === null || view.dueAt === null) return [];
      if (view.lateHours === 0 && (riskPct ?? 0) < AT_RISK_PCT) return [];
      return named(around, view.jobId, (names) => ({
        ...names,
        requestReference: view.requestReference ?? '',
        dueAt: view.dueAt!,
        endsAt: view.endsAt,
        lateHours: view.lateHours,
        riskPct: view.lateHours > 0 ? null : riskPct,
        causes,
      }));
    })
    .sort((a, b) => b.lateHours - a.lateHours || (b.riskPct ?? 0) - (a.riskPct ?? 0));
  return [...lateWithoutPlace(parts), ...planned];
}

/** Jobs that are due within the horizon and have no place in it. */
function lateWithoutPlace({ notes, around, nowMs }: Parts): LateView[] {
  return notes.unplaced.flatMap(({ jobId, reasons }) => {
    const dueAt = around.jobs.get(jobId)?.dueAt;
    if (!dueAt || dueAt.toISOString() > notes.horizonTo) return [];
    const lateHours = lateHoursAt(new Date(nowMs), dueAt);
    return named(around, jobId, (names) => ({
      ...names,
      requestReference: around.jobs.get(jobId)!.requestReference,
      dueAt: dueAt.toISOString(),
      endsAt: null,
      lateHours,
      riskPct: lateHours > 0 ? null : 100,
      causes: [{ kind: 'capacity', hours: lateHours, sentence: reasons.join(' ') }],
    }));
  });
}

/** What the planner said of a booking. */
export function notesOf(booking: Pick<AnyBooking, 'why'>): BookingNotes {
  return { ...NO_NOTES, ...booking.why };
}
