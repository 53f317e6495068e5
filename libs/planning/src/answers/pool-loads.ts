import type { Plan } from '../plan.js';
import type { Problem } from '../problem.js';

/** A set of interchangeable units, how busy it is while the plan lasts, and whether it makes work wait. */
export interface PoolLoad {
  /** Ids of the units, sorted. */
  units: readonly string[];
  link: string;
  /** Time that units are held ÷ time that they could be, until the last booking of the plan ends; 0 to 1. */
  share: number;
  /** Jobs that begin in the minute in which a unit of this pool comes free elsewhere. */
  waiting: readonly string[];
  binds: boolean;
}

/** From this share on a pool counts as binding even when nobody is seen waiting. */
const FULL = 0.85;

/** Every pool that a booked job drew on, the fullest first. */
export function poolLoads(problem: Problem, plan: Plan): PoolLoad[] {
  const untilMin = Math.max(1, ...plan.bookings.map(({ endMin }) => endMin));
  return poolsOf(problem)
    .map(({ link, units }) => {
      const held = plan.bookings.filter((booking) => units.includes(booking.items[link] ?? ''));
      const heldMin = held.reduce((sum, booking) => sum + booking.endMin - Math.max(0, booking.setupStartMin), 0);
      const share = heldMin / (units.length * untilMin);
      const waiting = waitingFor(units, plan);
      return { units, link, share, waiting, binds: share >= FULL || waiting.length > 0 };
    })
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.waiting.length - a.waiting.length || b.share - a.share);
}

function poolsOf(problem: Problem): { link: string; units: string[] }[] {
  const pools = new Map<string, { link: string; units: string[] }>();
  for (const { candidates } of problem.jobs) {
    for (const { links } of candidates) {
      for (const { link, pool } of links) {
        const units = [...pool].sort();
        pools.set(`${link} ${units.join(' ')}`, { link, units });
      }
    }
  }
  return [...pools.values()];
}

/** A job waits for a pool when it takes over a unit from another frame the minute that one is done with it. */
function waitingFor(units: readonly string[], { bookings }: Plan): string[] {
  return bookings
    .filter(({ items, setupStartMin, frameId }) =>
      Object.values(items).some(
        (unit) =>
          units.includes(unit) &&
          bookings.some(
            (other) =>
              other.frameId !== frameId && other.endMin === setupStartMin && Object.values(other.items).includes(unit),
          ),
      ),
    )
    .map(({ jobId }) => jobId);
}
