import type { BookedVisit, Booking, Cost, Unplaced } from './plan.js';
import { MOVED_AFTER_MIN, nearness } from './problem.js';
import type { Job, Problem } from './problem.js';

/** What a plan costs by the problem's objective, part by part. Running jobs count where they end, not how they got there. */
export function costOf(
  problem: Problem,
  bookings: readonly Booking[],
  visits: readonly BookedVisit[],
  unplaced: readonly Unplaced[],
): Cost {
  const jobs = new Map(problem.jobs.map((job) => [job.id, job]));
  const published = new Map(problem.published?.bookings.map((booking) => [booking.jobId, booking]));
  const planned = bookings.filter(({ jobId }) => !jobs.get(jobId)?.running);
  const late = bookings
    .map((booking) => ({ booking, minutes: lateMin(booking, jobs) }))
    .filter(({ minutes }) => minutes > 0);
  const moves = planned.flatMap((booking) => {
    const was = published.get(booking.jobId);
    if (!was) return [];
    const minutes = Math.abs(booking.startMin - was.startMin);
    const frame = was.frameId !== booking.frameId;
    return [{ minutes, frame, near: nearness(was.startMin), counts: frame || minutes > MOVED_AFTER_MIN }];
  });
  const parts = {
    weightedLateMin: sum(late.map(({ booking, minutes }) => minutes * (jobs.get(booking.jobId)?.weight ?? 0))),
    lateJobs: late.length,
    changeoverMin: sum(planned.map(({ setupMin }) => setupMin)),
    movedMin: sum(moves.map(({ minutes }) => minutes)),
    movedFrames: moves.filter(({ frame }) => frame).length,
    makespanMin: Math.max(0, ...bookings.map(({ endMin }) => endMin)),
    sumOfEndsMin: sum(planned.map(({ endMin }) => endMin)),
    loadHoursSquared: sum(
      problem.frames.map(({ id }) => (sum(planned.filter(({ frameId }) => frameId === id).map(heldMin)) / 60) ** 2),
    ),
    unplaced: unplaced.filter(({ reason }) => reason !== 'held').length,
  };
  const weighted = {
    movedMin: sum(moves.map(({ near, minutes }) => near * minutes)),
    moves: sum(moves.map(({ near, counts }) => (counts ? near : 0))),
    missedMin: missedMin(problem, bookings, visits),
  };
  return { ...parts, total: totalOf(problem, parts, weighted) };
}

/** What is charged for a job or visit without a place, and for each minute by which a pin or the end of a calibration is missed. */
export function penalties(problem: Problem): { unplaced: number; perMissedMin: number } {
  const rates = problem.objective.kind === 'lab' ? problem.objective : { perLateMin: 0, perEndMin: 1 };
  const steepest = problem.jobs.reduce(
    (most, job) => Math.max(most, job.weight * rates.perLateMin),
    Math.max(1, rates.perEndMin),
  );
  return { unplaced: 4 * steepest * problem.horizonMin, perMissedMin: 20 * steepest };
}

const sum = (all: readonly number[]): number => all.reduce((total, one) => total + one, 0);
const heldMin = ({ setupStartMin, endMin }: Booking): number => endMin - setupStartMin;
const lateMin = ({ jobId, endMin }: Booking, jobs: ReadonlyMap<string, Job>): number =>
  endMin - (jobs.get(jobId)?.dueMin ?? Infinity);

function missedMin(problem: Problem, bookings: readonly Booking[], visits: readonly BookedVisit[]): number {
  const starts = new Map(bookings.map(({ jobId, startMin }) => [jobId, startMin]));
  const pins = problem.jobs.map(({ id, pin, running }) =>
    running || pin?.startMin == null ? 0 : Math.max(0, (starts.get(id) ?? 0) - pin.startMin),
  );
  const ends = new Map(visits.map(({ visitId, endMin }) => [visitId, endMin]));
  const late = problem.visits.map((visit) =>
    Math.max(0, (ends.get(visit.id) ?? 0) - (visit.beforeMin ?? visit.earliestMin + visit.durationMin)),
  );
  return sum(pins) + sum(late);
}

/** Moves weighted by nearness, and minutes by which pins and calibrations are missed. */
interface Weighted {
  movedMin: number;
  moves: number;
  missedMin: number;
}

function totalOf(problem: Problem, parts: Omit<Cost, 'total'>, weighted: Weighted): number {
  const { objective } = problem;
  const { unplaced, perMissedMin } = penalties(problem);
  const charged = parts.unplaced * unplaced + weighted.missedMin * perMissedMin;
  if (objective.kind === 'makespan') return parts.makespanMin + charged;
  return (
    objective.perLateMin * parts.weightedLateMin +
    objective.perChangeoverMin * parts.changeoverMin +
    objective.perMovedMin * weighted.movedMin +
    objective.perMovedFrame * weighted.moves +
    objective.perEndMin * parts.sumOfEndsMin +
    objective.perLoadHourSquared * parts.loadHoursSquared +
    charged
  );
}
