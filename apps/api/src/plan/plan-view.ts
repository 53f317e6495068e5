import { calendarOf, MS_PER_DAY, openWindows, subtractWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';
import type { BookingView, LabSettings, LaneView, LateView, PlanView } from '#libs/contract/src/index.js';
import { NO_NOTES } from '#libs/records/src/index.js';
import type { BookingEntity, BookingNotes, NamedJob, PlanAround, PlanNotes } from '#libs/records/src/index.js';

/** A chance of being late from which a job counts as at risk, percent. */
const AT_RISK_PCT = 20;
const HOUR_MS = 3_600_000;

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
  bookings: readonly AnyBooking[];
  around: PlanAround;
  settings: LabSettings;
  closedDays: readonly string[];
  nowMs: number;
}

/** Everything that the manager's lanes show of a plan. */
export function planView(parts: Parts): PlanView {
  const { notes, around, nowMs } = parts;
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
    lateHours: lateHours(booking.endsAt, found?.dueAt ?? null),
    pinned: found?.job.pinFrameId != null,
    technicianId: booking.technicianId,
    train: booking.train.map(({ role, itemId }) => ({ role, itemId, tag: tags.get(itemId) ?? '' })),
  };
}

function lateHours(endsAt: Date, dueAt: Date | null): number {
  return dueAt === null ? 0 : Math.max(0, (endsAt.getTime() - dueAt.getTime()) / HOUR_MS);
}

function lanesOf({ around, notes, settings, closedDays, nowMs }: Parts, bookings: readonly BookingView[]): LaneView[] {
  const toMs = Date.parse(notes.horizonTo);
  const hours = openWindows(calendarOf(settings, closedDays), nowMs - MS_PER_DAY, toMs);
  const always = hours.map(spanView); // most frames are never down
  return around.frames.map((frame) => {
    const down = around.windows.filter(({ itemId }) => itemId === frame.id);
    const closed = down.map(({ startsAt, endsAt }) => ({ startMs: startsAt.getTime(), endMs: endsAt.getTime() }));
    return {
      frame: {
        id: frame.id,
        tag: frame.tag,
        name: frame.name,
        capacityN: (frame.details.tensionCapacityN as number) || (frame.details.compressionCapacityN as number) || null,
        torqueNm: (frame.details.torqueCapacityNm as number) || null,
        state: frame.state,
      },
      open: closed.length === 0 ? always : subtractWindows(hours, closed).map(spanView),
      down: down.map(({ id, kind, startsAt, endsAt, why }) => ({
        ...{ id, kind, why },
        startsAt: startsAt.toISOString(),
        endsAt: endsAt.toISOString(),
      })),
      bookings: bookings.filter(({ frameId }) => frameId === frame.id),
      load: notes.load.find(({ frameId }) => frameId === frame.id)?.weeks ?? [],
    };
  });
}

function spanView({ startMs, endMs }: TimeWindow): LaneView['open'][number] {
  return { startsAt: new Date(startMs).toISOString(), endsAt: new Date(endMs).toISOString() };
}

function lateOf({ bookings, around }: Parts, views: readonly BookingView[]): LateView[] {
  return bookings
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
}

/** What the planner said of a booking. */
export function notesOf(booking: Pick<AnyBooking, 'why'>): BookingNotes {
  return { ...NO_NOTES, ...(booking.why as Partial<BookingNotes>) };
}
