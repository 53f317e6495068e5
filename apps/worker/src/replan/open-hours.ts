import { clipWindows, openWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow, WorkCalendar } from '#libs/calendar/src/index.js';
import type { LabSettings } from '#libs/contract/src/index.js';

/** The lab's week and its closed days as one calendar. */
export function calendarOf(settings: LabSettings, closedDays: readonly string[]): WorkCalendar {
  return {
    zone: settings.timeZone,
    shifts: settings.shifts,
    exceptions: closedDays.map((date) => ({ date, shifts: [], reason: 'closed' })),
  };
}

/** When people can work on a frame: the lab's hours and extra shifts. */
export function frameHours(calendar: WorkCalendar, horizon: TimeWindow, extra: readonly TimeWindow[]): TimeWindow[] {
  return clipWindows(
    unionWindows(openWindows(calendar, horizon.startMs, horizon.endMs), extra),
    horizon.startMs,
    horizon.endMs,
  );
}
