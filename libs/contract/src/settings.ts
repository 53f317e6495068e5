import type { MatchSettings } from '#libs/matching/src/index.js';
import type { LabObjective } from '#libs/planning/src/index.js';

/** One shift of the week, on a weekday of the lab's time zone. `to` at or before `from` ends on the next day. */
export interface WeeklyShift {
  /** 1 is Monday, 7 Sunday. */
  weekday: number;
  /** `HH:MM`, wall clock. */
  from: string;
  to: string;
  name: string;
}

/** How long is kept what need not be kept for ever. The record, results and reports stay. */
export interface Retention {
  /** Ended work of the worker, months. */
  endedTasksMonths: number;
  /** Ended sessions, months. */
  endedSessionsMonths: number;
  /** Notices, read or not, months. */
  noticesMonths: number;
  /** The log of deliveries to other programs, months. */
  deliveriesMonths: number;
  /** Answers that a repeated POST gets again, days. */
  idempotencyKeysDays: number;
}

/** The lab's own choices: one row, edited as a whole under its version. */
export interface LabSettings {
  name: string;
  /** As on the head of reports, line by line. */
  address: string;
  /** Whom a reader of a report may ask. */
  contact: string;
  /** IANA name, e.g. `Europe/London`. */
  timeZone: string;
  shifts: WeeklyShift[];
  /** Working time from now on in which the published plan is kept, min. */
  freezeMin: number;
  /** How far ahead is planned, days. */
  horizonDays: number;
  /** How long one planning run may take, s. */
  planningSeconds: number;
  /** Warm-up of a frame that stood closed for `warmUpAfterMin` or longer, min. */
  warmUpMin: number;
  warmUpAfterMin: number;
  /** Specimens whose arrival nobody has announced are expected after so long, min; shown as assumed. */
  assumedArrivalMin: number;
  /** How long an item is away for calibration, min. */
  calibrationVisitMin: number;
  /** A shift check older than this is due again, min (8 to 12 h is common practice, no source). */
  shiftCheckValidMin: number;
  /** Largest error of a shift check, percent of the reference. */
  shiftCheckTolerancePct: number;
  /** A calibration due within so many days is announced. */
  calibrationNoticeDays: number;
  rampCPerMin: number;
  soakMin: number;
  matching: MatchSettings;
  objective: LabObjective;
  retention: Retention;
  /** Whether people may sign in with a demo password shown on the page; only ever true in the demo lab. */
  demo: boolean;
}

export interface LabSettingsView extends LabSettings {
  version: number;
}
