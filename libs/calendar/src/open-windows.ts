import { InvalidInput } from '#libs/errors/src/index.js';
import { MS_PER_DAY } from './time-window.js';
import { clipWindows, unionWindows } from './window-algebra.js';
import { addDays, instantAt, localDateAt, weekdayOf } from './zone.js';
import { calendarProblems } from './work-calendar.js';
import type { TimeWindow } from './time-window.js';
import type { ShiftHours, WorkCalendar } from './work-calendar.js';

/** One shift on one day, as a span of time. It lasts an hour more or less over a clock change. */
export interface DatedShift extends TimeWindow {
  /** The local date on which it starts. */
  date: string;
  name: string;
}

/**
 * When a calendar is open within [fromMs, toMs): sorted windows with a gap between any two.
 *
 * @throws {InvalidInput} listing every problem of the calendar
 * @throws {RangeError} when the span is longer than 20 years
 */
export function openWindows(calendar: WorkCalendar, fromMs: number, toMs: number): TimeWindow[] {
  return clipWindows(unionWindows(shiftsBetween(calendar, fromMs, toMs)), fromMs, toMs);
}

/**
 * The shifts that touch [fromMs, toMs), whole, by start: two that meet stay two.
 *
 * @throws {InvalidInput} listing every problem of the calendar
 * @throws {RangeError} when the span is longer than 20 years
 */
export function shiftsBetween(calendar: WorkCalendar, fromMs: number, toMs: number): DatedShift[] {
  const problems = calendarProblems(calendar);
  if (problems.length > 0) throw new InvalidInput(problems);
  return datesBetween(fromMs, toMs, calendar.zone)
    .flatMap((date) => hoursOn(calendar, date).map((hours) => dated(hours, date, calendar.zone)))
    .filter(({ startMs, endMs }) => startMs < endMs && startMs < toMs && endMs > fromMs)
    .sort((a, b) => a.startMs - b.startMs || a.endMs - b.endMs);
}

/** The shift that runs at an instant (of two, the one that began last), or null. */
export function shiftAt(calendar: WorkCalendar, instantMs: number): DatedShift | null {
  return shiftsBetween(calendar, instantMs, instantMs + 1).at(-1) ?? null;
}

/** Nobody keeps a roster for longer; a longer span is a slip of the caller's. */
const LONGEST_SPAN_DAYS = 20 * 366;

/** A shift may run into the next day, so that the day before the first counts too. */
function datesBetween(fromMs: number, toMs: number, zone: string): string[] {
  if (!(fromMs < toMs)) return [];
  if (toMs - fromMs > LONGEST_SPAN_DAYS * MS_PER_DAY)
    throw new RangeError('A calendar is laid out over 20 years at most.');
  const last = localDateAt(toMs, zone);
  const dates = [addDays(localDateAt(fromMs, zone), -1)];
  while (dates.at(-1)! < last) dates.push(addDays(dates.at(-1)!, 1));
  return dates;
}

function hoursOn({ shifts, exceptions }: WorkCalendar, date: string): readonly ShiftHours[] {
  const exceptional = exceptions.filter((day) => day.date === date);
  if (exceptional.length > 0) return exceptional.flatMap((day) => day.shifts);
  const weekday = weekdayOf(date);
  return shifts.filter((shift) => shift.weekday === weekday);
}

function dated({ from, to, name = '' }: ShiftHours, date: string, zone: string): DatedShift {
  const endDate = to <= from ? addDays(date, 1) : date;
  return { startMs: instantAt(date, from, zone), endMs: instantAt(endDate, to, zone), date, name };
}
