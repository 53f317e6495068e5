import { clipWindows, openWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow, WorkCalendar } from '#libs/calendar/src/index.js';

/** When people can work on a frame: the lab's hours and extra shifts. */
export function frameHours(calendar: WorkCalendar, horizon: TimeWindow, extra: readonly TimeWindow[]): TimeWindow[] {
  return clipWindows(
    unionWindows(openWindows(calendar, horizon.startMs, horizon.endMs), extra),
    horizon.startMs,
    horizon.endMs,
  );
}
