import { MS_PER_MINUTE } from './time-window.js';
import { unionWindows } from './window-algebra.js';
import type { MinuteWindow, TimeWindow } from './time-window.js';

/** The first whole minute from the origin that is not before an instant. */
export function minuteAtOrAfter(originMs: number, instantMs: number): number {
  return Math.ceil((instantMs - originMs) / MS_PER_MINUTE) + 0; // never −0
}

/** The last whole minute from the origin that is not after an instant. */
export function minuteAtOrBefore(originMs: number, instantMs: number): number {
  return Math.floor((instantMs - originMs) / MS_PER_MINUTE);
}

/** The instant of a minute, UTC ms. */
export function instantOfMinute(originMs: number, minute: number): number {
  return originMs + minute * MS_PER_MINUTE;
}

/** Open windows on the grid: only minutes that are open from their first to their last millisecond. Sorted, apart, not empty. */
export function minuteWindows(windows: readonly TimeWindow[], originMs: number): MinuteWindow[] {
  return unionWindows(windows)
    .map(({ startMs, endMs }) => ({
      startMin: minuteAtOrAfter(originMs, startMs),
      endMin: minuteAtOrBefore(originMs, endMs),
    }))
    .filter(({ startMin, endMin }) => startMin < endMin);
}
