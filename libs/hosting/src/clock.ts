import type { Clock } from '#libs/calendar/src/index.js';
import { SetClock, SystemClock } from '#libs/calendar/src/index.js';
import { instant } from './settings.js';

/** Lets a lab run at a stated time, for tests and for showing it at a certain hour; a lab at work leaves it out. */
export const clockSetting = instant('LOADTRAIN_CLOCK');

/** The one clock of a process. @param startMs what it shows at first, UTC ms; the machine's time when undefined */
export function clockFrom(startMs: number | undefined): Clock {
  return startMs === undefined ? new SystemClock() : new SetClock(startMs);
}
