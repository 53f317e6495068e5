import { Temporal } from 'temporal-polyfill';

/**
 * The instant of a wall-clock time in a time zone, UTC ms.
 *
 * A time that a clock change skips means the instant of the change; a time that it repeats means its first pass. So a
 * later wall-clock time never maps to an earlier instant, and two shifts that meet on the wall meet in time.
 *
 * @param date `YYYY-MM-DD`
 * @param time `HH:MM`, `00:00` to `24:00`, where `24:00` is the start of the next day
 * @param zone IANA name, e.g. `Europe/Berlin`
 * @throws {RangeError} when the date, the time or the zone does not exist
 */
export function instantAt(date: string, time: string, zone: string): number {
  const key = `${date} ${time} ${zone}`;
  const known = instants.get(key);
  if (known !== undefined) return known;
  const found = time === '24:00' ? instantAt(addDays(date, 1), '00:00', zone) : findInstant(date, time, zone);
  if (instants.size >= MOST_KEPT) instants.clear();
  instants.set(key, found);
  return found;
}

/** The same starts and ends of shifts are asked for whenever a calendar is laid out; a few years of them are kept. */
const instants = new Map<string, number>();
const MOST_KEPT = 10_000;

function findInstant(date: string, time: string, zone: string): number {
  const plainTime = Temporal.PlainTime.from(time);
  const zoned = Temporal.PlainDate.from(date).toZonedDateTime({ timeZone: zone, plainTime });
  const skipped = !zoned.toPlainDateTime().equals(Temporal.PlainDate.from(date).toPlainDateTime(plainTime));
  const change = skipped ? zoned.add({ nanoseconds: 1 }).getTimeZoneTransition('previous') : null;
  return (change ?? zoned).epochMilliseconds;
}

/** The date on the wall at an instant, `YYYY-MM-DD`. */
export function localDateAt(instantMs: number, zone: string): string {
  return zonedAt(instantMs, zone).toPlainDate().toString();
}

/** `YYYY-MM-DD` a number of days later (earlier when negative). */
export function addDays(date: string, days: number): string {
  return Temporal.PlainDate.from(date).add({ days }).toString();
}

/**
 * The same time on the wall a number of months later; a day that the month does not have becomes its last day.
 *
 * @param months whole, may be negative
 */
export function addMonths(instantMs: number, months: number, zone: string): number {
  return zonedAt(instantMs, zone).add({ months }).epochMilliseconds;
}

/** 1 Monday … 7 Sunday. */
export function weekdayOf(date: string): number {
  return Temporal.PlainDate.from(date).dayOfWeek;
}

/** Whether a text names a time zone that instants can be shown in. */
export function isZone(text: string): boolean {
  try {
    return Boolean(zonedAt(0, text));
  } catch {
    return false;
  }
}

/** Whether a text is a date that exists, written `YYYY-MM-DD`. */
export function isDate(text: string): boolean {
  try {
    return addDays(text, 0) === text;
  } catch {
    return false;
  }
}

function zonedAt(instantMs: number, zone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(instantMs).toZonedDateTimeISO(zone);
}
