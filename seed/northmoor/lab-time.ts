import { addDays, instantAt, localDateAt, MS_PER_DAY, MS_PER_MINUTE, weekdayOf } from '#libs/calendar/src/index.js';
import { ZONE } from './people.js';

/** Tells the demo's dates: all of them are so many working days and hours from the first start of the lab. */
export class LabTime {
  private readonly dates = new Map<number, string>();

  constructor(readonly nowMs: number) {}

  /** The start itself. */
  get now(): Date {
    return new Date(this.nowMs);
  }

  minutesAgo(minutes: number): Date {
    return new Date(this.nowMs - minutes * MS_PER_MINUTE);
  }

  daysFromNow(days: number): Date {
    return new Date(this.nowMs + days * MS_PER_DAY);
  }

  /**
   * A time on the wall so many working days (Monday to Friday) from today; day 0 is today, or the Monday after on a weekend.
   *
   * @param workingDays whole, may be negative
   * @param time `HH:MM`
   */
  at(workingDays: number, time: string): Date {
    return new Date(instantAt(this.workingDate(workingDays), time, ZONE));
  }

  /** Something that has happened: as `at`, but never later than three quarters of an hour ago. */
  past(workingDays: number, time: string): Date {
    return new Date(Math.min(this.at(workingDays, time).getTime(), this.nowMs - 45 * MS_PER_MINUTE));
  }

  private workingDate(workingDays: number): string {
    const known = this.dates.get(workingDays);
    if (known !== undefined) return known;
    const date = workingDays === 0 ? this.firstDate() : this.nextWorkingDate(workingDays);
    this.dates.set(workingDays, date);
    return date;
  }

  /** Today, or the Monday after. */
  private firstDate(): string {
    let date = localDateAt(this.nowMs, ZONE);
    while (weekdayOf(date) > 5) date = addDays(date, 1);
    return date;
  }

  /** One working day further away than the one before. */
  private nextWorkingDate(workingDays: number): string {
    const step = Math.sign(workingDays);
    let date = addDays(this.workingDate(workingDays - step), step);
    while (weekdayOf(date) > 5) date = addDays(date, step);
    return date;
  }
}
