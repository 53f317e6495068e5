import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { isDate, isZone } from './zone.js';

/** A stretch of work on the wall clock, `HH:MM` to `HH:MM`; one that ends at or before its start ends on the next day. */
export interface ShiftHours {
  from: string;
  to: string;
  /** What people call it, e.g. `early`. */
  name?: string;
}

/** A stretch of work that comes back every week. */
export interface Shift extends ShiftHours {
  /** The day on which it starts: 1 Monday … 7 Sunday. */
  weekday: number;
}

export type WeeklyShifts = readonly Shift[];

/** A day on which other shifts start than its weekday's; a holiday has none. A shift of the eve still runs to its end. */
export interface DayException {
  /** `YYYY-MM-DD` in the calendar's zone. */
  date: string;
  shifts: readonly ShiftHours[];
  reason: string;
}

/** When somebody or something works, as people write it on the wall. */
export interface WorkCalendar {
  /** IANA name of the time zone, e.g. `Europe/Berlin`. */
  zone: string;
  shifts: WeeklyShifts;
  exceptions: readonly DayException[];
}

/**
 * The week of a place and the days on which it is closed, as one calendar.
 *
 * @param closedDays `YYYY-MM-DD` in the place's time zone
 */
export function calendarOf(
  { timeZone, shifts }: { timeZone: string; shifts: WeeklyShifts },
  closedDays: readonly string[],
): WorkCalendar {
  return {
    zone: timeZone,
    shifts,
    exceptions: closedDays.map((date) => ({ date, shifts: [], reason: 'closed' })),
  };
}

/**
 * Everything that is wrong with a calendar, by field; nothing when it can be used.
 *
 * Overlapping shifts are allowed (two people hand over): windows are joined where they are computed.
 */
export function calendarProblems({ zone, shifts, exceptions }: WorkCalendar): FieldProblem[] {
  return [
    ...(isZone(zone) ? [] : [problem('zone', zone, 'an IANA time zone, e.g. Europe/Berlin')]),
    ...shifts.flatMap((shift, index) => shiftProblems(shift, `shifts[${index}]`)),
    ...exceptions.flatMap((day, index) => exceptionProblems(day, `exceptions[${index}]`)),
  ];
}

function shiftProblems(shift: Shift, path: string): FieldProblem[] {
  const isWeekday = Number.isInteger(shift.weekday) && shift.weekday >= 1 && shift.weekday <= 7;
  return [
    ...(isWeekday ? [] : [problem(`${path}.weekday`, shift.weekday, '1 (Monday) to 7 (Sunday)')]),
    ...hoursProblems(shift, path),
  ];
}

function exceptionProblems(day: DayException, path: string): FieldProblem[] {
  return [
    ...(isDate(day.date) ? [] : [problem(`${path}.date`, day.date, 'a date as YYYY-MM-DD')]),
    ...day.shifts.flatMap((hours, index) => hoursProblems(hours, `${path}.shifts[${index}]`)),
  ];
}

const START_OF_SHIFT = /^([01]\d|2[0-3]):[0-5]\d$/;
const END_OF_SHIFT = /^(([01]\d|2[0-3]):[0-5]\d|24:00)$/;

function hoursProblems({ from, to }: ShiftHours, path: string): FieldProblem[] {
  return [
    ...(START_OF_SHIFT.test(from) ? [] : [problem(`${path}.from`, from, 'a time from 00:00 to 23:59')]),
    ...(END_OF_SHIFT.test(to) ? [] : [problem(`${path}.to`, to, 'a time from 00:00 to 24:00')]),
  ];
}

function problem(field: string, found: unknown, allowed: string): FieldProblem {
  return fieldProblem({ field, found, allowed, unit: '' });
}
