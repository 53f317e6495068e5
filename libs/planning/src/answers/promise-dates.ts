import type { Booking, Plan } from '../plan.js';
import type { Frame, Problem, Window } from '../problem.js';
import { workingWindows } from '../windows.js';
import { sumWithin } from './load-by-frame.js';

/** How a job's real duration spreads about the planned one: real = planned × exp(mean + sd·z), z standard normal. */
export interface DurationSpread {
  logMean: number;
  logSd: number;
}

/** When a job is done with some chance, min from the start of the horizon; and how likely it is late. */
export interface PromisedDate {
  jobId: string;
  done50Min: number;
  done80Min: number;
  /** Share of the replays in which it ended after its due minute, 0 to 1. */
  lateShare: number;
}

export interface ReplayOptions {
  /** How often the plan is replayed; 500 give the 80 % point to about ± 2 % of rank. */
  replays: number;
  seed: number;
  /** By job id; what is missing runs as planned. */
  spreadOf: (jobId: string) => DurationSpread;
}

/**
 * Replays a plan with durations drawn from what was learned (Monte Carlo). Work keeps its frames, units and order; each job
 * begins when the plan says or, when something before it took longer, as soon as its frame and its units let it, and goes
 * on in the frame's open windows. Nothing is replanned in a replay, so that a real lab, which replans, does rather better:
 * the promise errs to the safe side, and with durations as planned it is the plan itself.
 *
 * @returns one promise per booked job, in the order of the plan
 */
export function promiseDates(problem: Problem, plan: Plan, { replays, seed, spreadOf }: ReplayOptions): PromisedDate[] {
  const order = [...plan.bookings].sort((a, b) => a.setupStartMin - b.setupStartMin || a.startMin - b.startMin);
  const jobs = new Map(problem.jobs.map((job) => [job.id, job]));
  const frames = new Map(problem.frames.map((frame) => [frame.id, new OpenTime(frame)]));
  const ends = order.map(() => new Float64Array(replays));
  const normal = normals(seed);
  for (let replay = 0; replay < replays; replay += 1) {
    const frameFree = new Map<string, number>();
    const unitFree = new Map<string, number>();
    order.forEach((booking, index) => {
      const { logMean, logSd } = spreadOf(booking.jobId);
      const stretch = Math.exp(logMean + logSd * normal());
      const release = jobs.get(booking.jobId)?.running ? 0 : (jobs.get(booking.jobId)?.releaseMin ?? 0);
      const end = endOf(booking, stretch, release, frames.get(booking.frameId), frameFree, unitFree);
      frameFree.set(booking.frameId, end);
      for (const unit of Object.values(booking.items)) unitFree.set(unit, end);
      ends[index]![replay] = end;
    });
  }
  return order.map(({ jobId }, index) => {
    const sorted = ends[index]!.sort();
    const due = jobs.get(jobId)?.dueMin ?? Infinity;
    return {
      jobId,
      done50Min: rank(sorted, 0.5),
      done80Min: rank(sorted, 0.8),
      lateShare: sorted.filter((end) => end > due).length / replays,
    };
  });
}

/**
 * Work begins when the plan says, or later when something before it took longer, and its stretches in open time grow by
 * the factor drawn. What the plan leaves between them (a technician elsewhere) grows with them.
 */
function endOf(
  booking: Booking,
  stretch: number,
  release: number,
  open: OpenTime | undefined,
  frameFree: ReadonlyMap<string, number>,
  unitFree: ReadonlyMap<string, number>,
): number {
  const { setupStartMin, startMin, endMin, frameId } = booking;
  const units = Object.values(booking.items).map((unit) => unitFree.get(unit) ?? 0);
  const begin = Math.max(0, setupStartMin, frameFree.get(frameId) ?? 0, ...units);
  if (!open) return Math.max(begin + startMin - setupStartMin, release) + (endMin - Math.max(0, startMin)) * stretch;
  const ready = Math.max(release, open.after(begin, open.between(setupStartMin, startMin)));
  return open.after(ready, open.between(Math.max(0, startMin), endMin) * stretch);
}

/** A frame's open windows as a clock that stands still while it is closed. */
class OpenTime {
  private readonly windows: readonly Window[];

  constructor(frame: Frame) {
    this.windows = workingWindows(frame);
  }

  /** Open time in [fromMin, toMin). */
  between(fromMin: number, toMin: number): number {
    return sumWithin(this.windows, { startMin: fromMin, endMin: toMin });
  }

  /** The minute at which so much open time has passed from a minute on; past the last window time runs on. */
  after(fromMin: number, minutes: number): number {
    let left = minutes;
    let last = fromMin;
    for (let at = this.firstEndingAfter(fromMin); at < this.windows.length; at += 1) {
      const { startMin, endMin } = this.windows[at]!;
      const begin = Math.max(startMin, fromMin);
      if (left <= endMin - begin) return begin + left;
      left -= endMin - begin;
      last = endMin;
    }
    return last + left;
  }

  private firstEndingAfter(minute: number): number {
    let [low, high] = [0, this.windows.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.windows[middle]!.endMin <= minute) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** The value below which that share of the sorted ones lies (the smallest rank that reaches it). */
function rank(sorted: Float64Array, share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}

/** Standard normal numbers by Box and Muller over a 32-bit generator (mulberry32); the same seed gives the same ones. */
function normals(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
