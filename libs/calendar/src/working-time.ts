import { MS_PER_MINUTE } from './time-window.js';
import { clipWindows, unionWindows } from './window-algebra.js';
import type { TimeWindow } from './time-window.js';

/**
 * When work of a length that starts at fromMs is done, if it goes on only while the windows are open, UTC ms.
 *
 * @param minutes at least 0; no work is done at once, even while closed
 * @returns the first such instant, or null when the windows do not hold that much work
 * @throws {RangeError} when minutes is negative or not finite
 */
export function addWorkingMinutes(open: readonly TimeWindow[], fromMs: number, minutes: number): number | null {
  if (!(minutes >= 0 && minutes < Infinity)) throw new RangeError(`Working minutes must be 0 or more, not ${minutes}.`);
  let leftMs = minutes * MS_PER_MINUTE;
  if (leftMs === 0) return fromMs;
  for (const { startMs, endMs } of clipWindows(open, fromMs, Infinity)) {
    if (leftMs <= endMs - startMs) return startMs + leftMs;
    leftMs -= endMs - startMs;
  }
  return null;
}

/** The first open instant at or after another, UTC ms, or null. */
export function nextOpenAt(open: readonly TimeWindow[], fromMs: number): number | null {
  const next = unionWindows(open).find(({ endMs }) => fromMs < endMs);
  return next ? Math.max(next.startMs, fromMs) : null;
}
