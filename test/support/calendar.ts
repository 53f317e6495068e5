import { clipWindows, instantAt, MS_PER_MINUTE, totalMs } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';

const shown = (zone: string) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });

/** The time on the wall at an instant, `HH:MM`, by the platform's own calendar. */
export const localTimeAt = (instantMs: number, zone: string): string => shown(zone).format(instantMs);

/** The whole of a local day, which lasts 23 or 25 hours where the clock changes. */
export const localDay = (date: string, zone: string): TimeWindow => ({
  startMs: instantAt(date, '00:00', zone),
  endMs: instantAt(date, '24:00', zone),
});

/** Open minutes in [fromMs, toMs). */
export const workingMinutesBetween = (open: readonly TimeWindow[], fromMs: number, toMs: number): number =>
  totalMs(clipWindows(open, fromMs, toMs)) / MS_PER_MINUTE;
