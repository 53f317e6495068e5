import {
  addWorkingMinutes,
  calendarOf,
  clipWindows,
  MS_PER_DAY,
  MS_PER_MINUTE,
  minuteAtOrAfter,
  minuteAtOrBefore,
  minuteWindows,
  openWindows,
  subtractWindows,
  totalMs,
  unionWindows,
} from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';
import type { Item as LabItem, MatchAnswer, Technician } from '#libs/matching/src/index.js';
import type * as planning from '#libs/planning/src/index.js';
import { NO_OVERLAY } from '#libs/records/src/index.js';
import type { OpenJob, Overlay, PlanFacts, TrainPlace } from '#libs/records/src/index.js';
import { perSpecimenMin } from './durations.js';
import { CHECKED_LINKS, minutesByLink } from './link-minutes.js';
import { frameHours } from './open-hours.js';
import { usableWindows } from './usable-windows.js';

/**
 * A setup is begun only where so long a stint of testing can follow it, or all of the job, min: shortly before a stop it would
 * only keep frame and items (common practice, no source).
 */
const LEAST_STINT_MIN = 60;
/** Of the trains that matching offers on a frame, the planner chooses among so many. */
const TRAINS_PER_FRAME = 3;

export interface PlanningTask {
  problem: planning.Problem;
  /** Instant of minute 0, UTC ms. */
  originMs: number;
  /** What matching said for each job that is free to be planned. */
  matches: ReadonlyMap<string, MatchAnswer>;
}

export type Match = (job: OpenJob, facts: PlanFacts) => MatchAnswer | null;

/**
 * The planning problem that the facts pose, with an overlay of changes that somebody tries.
 *
 * @param match what matching says to a job; null when its request cannot be matched at all
 */
export function problemOf(facts: PlanFacts, match: Match, overlay: Overlay = NO_OVERLAY): PlanningTask {
  const originMs = Math.floor(facts.nowMs / MS_PER_MINUTE) * MS_PER_MINUTE;
  const horizon = { startMs: originMs, endMs: originMs + facts.settings.horizonDays * MS_PER_DAY };
  const matches = matchesOf(facts, match);
  const jobs = facts.jobs.map((job) => jobOf(job, facts, originMs, matches.get(job.id)));
  return {
    originMs,
    matches,
    problem: {
      horizonMin: facts.settings.horizonDays * 1440,
      frames: framesOf(facts, overlay, horizon),
      items: itemsOf(facts, horizon),
      technicians: techniciansOf(facts, overlay, horizon),
      jobs,
      visits: visitsOf(facts, horizon),
      changeover: changeoverOf(facts),
      objective: facts.settings.objective,
      published: publishedOf(facts, originMs),
      freezeUntilMin: freezeUntilMin(facts, horizon),
      leastStintMin: LEAST_STINT_MIN,
    },
  };
}

function matchesOf(facts: PlanFacts, match: Match): Map<string, MatchAnswer> {
  const free = facts.jobs.filter((job) => job.on === null);
  const answers = free.map((job) => [job.id, match(job, facts)] as const);
  return new Map(answers.flatMap(([id, answer]) => (answer ? [[id, answer]] : [])));
}

function framesOf(facts: PlanFacts, overlay: Overlay, horizon: TimeWindow): planning.Frame[] {
  const calendar = calendarOf(facts.settings, facts.closedDays);
  return facts.lab.items
    .filter(({ kind }) => kind === 'frame')
    .map((frame) => {
      const extra = [...facts.extraShifts, ...overlay.extraShifts].filter(({ frameId }) => frameId === frame.id);
      const down = [...frame.heldWindows, ...overlay.down.filter(({ frameId }) => frameId === frame.id)];
      return {
        id: frame.id,
        open: frame.state === 'in-service' ? minuteWindows(frameHours(calendar, horizon, extra), horizon.startMs) : [],
        down: outwards(down, horizon),
        warmUpMin: facts.settings.warmUpMin,
        warmUpAfterMin: facts.settings.warmUpAfterMin,
        rig: rigOf(facts, frame.id),
      };
    });
}

/** A frame that is down for part of a minute is down for all of it. */
function outwards(windows: readonly TimeWindow[], horizon: TimeWindow): planning.Window[] {
  return clipWindows(windows, horizon.startMs, horizon.endMs).map(({ startMs, endMs }) => ({
    startMin: minuteAtOrBefore(horizon.startMs, startMs),
    endMin: minuteAtOrAfter(horizon.startMs, endMs),
  }));
}

function rigOf(facts: PlanFacts, frameId: string): planning.Rig {
  const rig = facts.rigs.find((fitted) => fitted.frameId === frameId);
  return { items: itemsByLink(rig?.links ?? []), family: null, temperatureC: rig?.chamberC ?? null };
}

/** Units by link, as the planner wants them. */
export function itemsByLink(train: readonly TrainPlace[]): Record<string, string> {
  return Object.fromEntries(train.map(({ role, itemId }) => [role, itemId]));
}

function itemsOf(facts: PlanFacts, horizon: TimeWindow): planning.Item[] {
  return facts.lab.items
    .filter(({ kind }) => kind !== 'frame')
    .map((item) => ({ id: item.id, usable: minuteWindows(usableWindows(item, horizon), horizon.startMs) }));
}

function techniciansOf(facts: PlanFacts, overlay: Overlay, horizon: TimeWindow): planning.Technician[] {
  return merged(facts.lab.technicians).map(({ id, methodIds, windows }) => {
    const away = overlay.away.filter(({ technicianId }) => technicianId === id);
    const extra = overlay.extraShifts.filter(({ technicianId }) => technicianId === id);
    const present = clipWindows(unionWindows(subtractWindows(windows, away), extra), horizon.startMs, horizon.endMs);
    return { id, shifts: minuteWindows(present, horizon.startMs), authorisations: methodIds };
  });
}

/**
 * One entry a person. A method counts when the person may run it on every shift of the roster; leave that begins or ends
 * in between is left to the bench, which asks again.
 */
function merged(technicians: readonly Technician[]): Technician[] {
  const ids = [...new Set(technicians.map(({ id }) => id))];
  return ids.map((id) => {
    const entries = technicians.filter((entry) => entry.id === id);
    const windows = unionWindows(...entries.map((entry) => entry.windows));
    const methodIds = entries
      .filter((entry) => totalMs(entry.windows) === totalMs(windows))
      .flatMap((entry) => entry.methodIds);
    return { id, methodIds, windows };
  });
}

function jobOf(job: OpenJob, facts: PlanFacts, originMs: number, answer: MatchAnswer | undefined): planning.Job {
  const farMin = facts.settings.horizonDays * 1440;
  return {
    id: job.id,
    releaseMin: Math.max(0, minuteAtOrAfter(originMs, releaseMs(job, facts))),
    dueMin: job.dueMs === null ? farMin : minuteAtOrBefore(originMs, job.dueMs),
    weight: job.dueMs === null ? 0 : job.weight,
    after: [],
    candidates: answer ? candidatesOf(job, facts, answer) : [],
    attended: 'throughout',
    authorisation: job.method.id,
    hold: job.hold,
    pin: job.pin && {
      frameId: job.pin.frameId,
      startMin: job.pin.startMs === null ? null : minuteAtOrAfter(originMs, job.pin.startMs),
    },
    running: runningOf(job, facts, originMs),
  };
}

/** Specimens that are not here yet are expected when the team said, or after the lab's assumed time; then they are conditioned. */
export function releaseMs(job: OpenJob, facts: PlanFacts): number {
  if (job.releasedMs !== null) return job.releasedMs;
  const assumedMs = facts.nowMs + facts.settings.assumedArrivalMin * MS_PER_MINUTE;
  const arrivesMs = job.expectedMs === null ? assumedMs : Math.max(job.expectedMs, facts.nowMs);
  return arrivesMs + (job.method.conditioning?.hours ?? 0) * 60 * MS_PER_MINUTE;
}

function candidatesOf(job: OpenJob, facts: PlanFacts, { candidates, needs }: MatchAnswer): planning.Candidate[] {
  const byFrame = new Map<string, number>();
  return candidates
    .filter(({ frameId }) => {
      const taken = (byFrame.get(frameId) ?? 0) + 1;
      byFrame.set(frameId, taken);
      return taken <= TRAINS_PER_FRAME;
    })
    .map(({ frameId, links }) => ({
      frameId,
      perSpecimenMin: perSpecimenMin(job.method, facts.durations),
      specimens: Math.max(1, job.specimensLeft),
      links: links.map(({ role, pool }) => ({ link: role, pool })),
      family: null,
      temperatureC: needs.chamber ? needs.temperature.value : null,
    }));
}

function runningOf(job: OpenJob, facts: PlanFacts, originMs: number): planning.RunningJob | null {
  if (!job.on) return null;
  const workMin = Math.ceil(perSpecimenMin(job.method, facts.durations) * Math.max(1, job.specimensLeft));
  const setupMin = job.on.started ? 0 : job.method.defaultSetupMin;
  const startMin = Math.min(0, minuteAtOrBefore(originMs, job.on.sinceMs));
  return { frameId: job.on.frameId, items: itemsByLink(job.on.train), startMin, endMin: setupMin + workMin };
}

function visitsOf(facts: PlanFacts, horizon: TimeWindow): planning.Visit[] {
  const byId = new Map<string, LabItem>(facts.lab.items.map((item) => [item.id, item]));
  return facts.dueDates
    .filter(
      ({ itemId, dueMs }) =>
        dueMs < horizon.endMs && byId.get(itemId)?.state === 'in-service' && byId.get(itemId)?.kind !== 'frame',
    )
    .map(({ itemId, dueMs, holdsMs }) => ({
      id: visitId(itemId),
      itemId,
      durationMin: facts.settings.calibrationVisitMin,
      earliestMin: 0,
      beforeMin: dueMs <= horizon.startMs ? null : minuteAtOrBefore(horizon.startMs, dueMs),
      inForceUntilMin: minuteAtOrBefore(horizon.startMs, Math.max(dueMs, facts.nowMs) + holdsMs),
    }));
}

const visitId = (itemId: string): string => `visit-${itemId}`;

function changeoverOf({ settings }: PlanFacts): planning.Changeover {
  return {
    byLinkMin: minutesByLink(settings.matching.changeMin),
    checkedLinks: [...CHECKED_LINKS],
    checkMin: settings.matching.shiftCheckMin,
    rampCPerMin: settings.rampCPerMin,
    soakMin: settings.soakMin,
    families: null,
  };
}

function publishedOf(facts: PlanFacts, originMs: number): planning.PublishedPlan | null {
  if (!facts.published) return null;
  const open = new Set(facts.jobs.map(({ id }) => id));
  const bookings = facts.published.bookings
    .filter(({ jobId }) => open.has(jobId))
    .map((booking) => ({
      jobId: booking.jobId,
      frameId: booking.frameId,
      setupStartMin: minuteAtOrBefore(originMs, booking.setupMs),
      startMin: minuteAtOrBefore(originMs, booking.startMs),
      items: itemsByLink(booking.train),
      technicianId: booking.technicianId,
    }));
  const visits = facts.published.visits.map(({ itemId, startMs }) => ({
    visitId: visitId(itemId),
    startMin: minuteAtOrBefore(originMs, startMs),
  }));
  return { bookings, visits, order: facts.published.order };
}

function freezeUntilMin(facts: PlanFacts, horizon: TimeWindow): number {
  const open = openWindows(calendarOf(facts.settings, facts.closedDays), horizon.startMs, horizon.endMs);
  const untilMs = addWorkingMinutes(open, horizon.startMs, facts.settings.freezeMin) ?? horizon.endMs;
  return minuteAtOrAfter(horizon.startMs, untilMs);
}
