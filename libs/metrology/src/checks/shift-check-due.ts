import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
/** When a cell was checked, fitted and is to be used; UTC ms. */
export interface ShiftCheckFacts {
  nowMs: number;
  /** The last check of this cell on this frame, or null. */
  lastCheck: { atMs: number; passed: boolean } | null;
  /** When the cell was last fitted on the frame. */
  fittedAtMs: number;
  /** When the present shift began; null outside a shift. */
  shiftStartMs: number | null;
  /** When the cell was last overloaded, or null. */
  overloadedAtMs: number | null;
  /** Longest time that a check holds, hours, above 0: a shift of 8 h to 12 h (common practice, no source; ISO/IEC 17025:2017 6.4.10 gives the duty). */
  longestHours: number;
}

export type ShiftCheckReason =
  'never-checked' | 'failed' | 'overloaded-since' | 'fitted-since' | 'new-shift' | 'too-old';

/**
 * Why a shift check is needed before the next test, or null when the last one holds: it passed, after the cell was fitted and
 * after any overload, in this shift, and no longer ago than `longestHours`.
 */
export function shiftCheckNeeded(facts: ShiftCheckFacts): ShiftCheckReason | null {
  const { nowMs, lastCheck, fittedAtMs, shiftStartMs, overloadedAtMs, longestHours } = facts;
  if (!lastCheck) return 'never-checked';
  if (!lastCheck.passed) return 'failed';
  if (overloadedAtMs !== null && lastCheck.atMs <= overloadedAtMs) return 'overloaded-since';
  if (lastCheck.atMs < fittedAtMs) return 'fitted-since';
  if (shiftStartMs !== null && lastCheck.atMs < shiftStartMs) return 'new-shift';
  return nowMs - lastCheck.atMs > longestHours * MS_PER_HOUR ? 'too-old' : null;
}
