import { MS_PER_DAY, nextOpenAt, openWindows, sayInstant, unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow, WorkCalendar } from '#libs/calendar/src/index.js';

/** How far ahead the next opening is looked for, days: longer than the lab is ever shut. */
const LOOK_AHEAD_DAYS = 60;

/** When people work in the lab from an instant on, as far as the next opening is looked for. */
export function hoursFrom(calendar: WorkCalendar, fromMs: number): TimeWindow[] {
  return openWindows(calendar, fromMs, fromMs + LOOK_AHEAD_DAYS * MS_PER_DAY);
}

/**
 * Says that nobody can start a job on a frame at an instant, and when somebody can again; nothing while it is open.
 *
 * @param hours the lab's, from {@link hoursFrom} that instant
 * @param extra the extra shifts of this frame
 */
export function closedThen(
  tag: string,
  atMs: number,
  { hours, extra, zone }: { hours: readonly TimeWindow[]; extra: readonly TimeWindow[]; zone: string },
): string[] {
  const opensMs = nextOpenAt(unionWindows(hours, extra), atMs);
  if (opensMs === atMs) return [];
  const opens =
    opensMs === null
      ? `no shift there is known for the next ${LOOK_AHEAD_DAYS} days`
      : `it opens ${sayInstant(opensMs, zone)}`;
  return [`${tag} is closed then; ${opens}.`];
}
