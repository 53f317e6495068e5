/**
 * Share of the limit by which a figure may pass it and still count as on it. It only takes up binary rounding, so that
 * 0.1 + 0.2 meets a limit of 0.3; no instrument of the trade resolves it.
 */
const ROUNDING_SHARE = 1e-9;

/** Whether the size of a figure does not pass its limit; exactly on the limit is within it. */
export function isWithinLimit(found: number, limit: number): boolean {
  return Math.abs(found) <= limit * (1 + ROUNDING_SHARE);
}

/** Whether a figure reaches a lowest value; exactly on it counts. */
export function reachesLimit(found: number, lowest: number): boolean {
  return found >= lowest * (1 - ROUNDING_SHARE);
}
