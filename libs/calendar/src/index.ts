export { Clock, SetClock, SystemClock } from './clock.js';
export { icsFeed } from './ics-feed.js';
export type { Feed, FeedEvent } from './ics-feed.js';
export { instantOfMinute, minuteAtOrAfter, minuteAtOrBefore, minuteWindows, timeWindowOf } from './minute-grid.js';
export { openWindows, shiftAt, shiftsBetween } from './open-windows.js';
export type { DatedShift } from './open-windows.js';
export { MS_PER_DAY, MS_PER_MINUTE } from './time-window.js';
export type { MinuteWindow, TimeWindow } from './time-window.js';
export {
  clipWindows,
  covers,
  intersectWindows,
  subtractWindows,
  totalMs,
  unionWindows,
  windowAt,
} from './window-algebra.js';
export { calendarOf, calendarProblems } from './work-calendar.js';
export type { DayException, Shift, ShiftHours, WeeklyShifts, WorkCalendar } from './work-calendar.js';
export { addWorkingMinutes, nextOpenAt, workingMinutesBetween } from './working-time.js';
export {
  addDays,
  addMonths,
  instantAt,
  isDate,
  isZone,
  localDateAt,
  localDay,
  localTimeAt,
  weekdayOf,
} from './zone.js';
export { sayInstant } from './say-instant.js';
