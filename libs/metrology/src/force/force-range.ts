import { isWithinLimit, reachesLimit } from '../within-limit.js';

/** A range must hold over 20 % to 100 % of its maximum at least, ISO 7500-1:2018 6.4 (from memory, high). */
export const DEFAULT_SHARE = 0.2;

/** Steps that the part from 20 % to 100 % needs, ISO 7500-1:2018 6.4 (from memory, high). */
export const FEWEST_STEPS = 5;

/**
 * Below 20 % the steps go down by 10, 5, 2, 1, 0.5 … %, so that two neighbours are at most 2.5 apart
 * (ISO 7500-1:2018 6.4, from memory). "About" is read as 5 % (common practice, no source).
 */
export const WIDEST_RATIO = 2.5 * 1.05;

/**
 * The range from the highest step down over which every step is good enough.
 *
 * @param steps by force, the smallest first
 * @returns both ends as nominal forces, or null when it does not hold over the part from 20 % to 100 %, or has fewer than
 * five steps there
 */
export function rangeReaching<S extends { nominal: number }>(
  steps: readonly S[],
  isGoodEnough: (step: S) => boolean,
): { from: number; to: number } | null {
  const top = steps.at(-1);
  const held = heldDown(steps, isGoodEnough);
  const lowest = held.at(-1);
  if (!top || !lowest) return null;
  const upper = held.filter(({ nominal }) => reachesLimit(nominal, DEFAULT_SHARE * top.nominal));
  const reachesDown = isWithinLimit(lowest.nominal, DEFAULT_SHARE * top.nominal);
  return reachesDown && upper.length >= FEWEST_STEPS ? { from: lowest.nominal, to: top.nominal } : null;
}

/** The steps from the highest down, up to the first that is not good enough or stands too far below its neighbour. */
function heldDown<S extends { nominal: number }>(steps: readonly S[], isGoodEnough: (step: S) => boolean): S[] {
  const held: S[] = [];
  for (const step of [...steps].reverse()) {
    const above = held.at(-1);
    if (!isGoodEnough(step) || (above && isGap(step.nominal, above.nominal, steps.at(-1)!.nominal))) break;
    held.push(step);
  }
  return held;
}

/** Whether two neighbours, of which the lower lies below the part from 20 % to 100 %, are too far apart. */
export function isGap(lower: number, upper: number, top: number): boolean {
  return !reachesLimit(lower, DEFAULT_SHARE * top) && !isWithinLimit(upper / lower, WIDEST_RATIO);
}
