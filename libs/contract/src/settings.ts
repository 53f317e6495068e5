import type { WorkCalendar } from '#libs/calendar/src/index.js';
import type { MatchSettings } from '#libs/matching/src/index.js';

/** The lab's own choices, kept as one versioned row; every figure can be changed by the manager. */
export interface LabSettings {
  laboratory: { name: string; address: string; place: string; contact: string };
  /** When the lab is open, in its own time zone. */
  calendar: WorkCalendar;
  matching: MatchSettings;
  planning: PlanningSettings;
  bench: BenchSettings;
}

export interface PlanningSettings {
  /** How far ahead work is planned, days. */
  horizonDays: number;
  /** The published plan is kept for so many working minutes from now. */
  freezeWorkingMin: number;
  /** How long the planner may think before it publishes, s. */
  thinkingS: number;
  /** Cost per weighted minute late, minute of changeover, minute moved, frame changed, minute of an end, squared hour of load. */
  objective: {
    perLateMin: number;
    perChangeoverMin: number;
    perMovedMin: number;
    perMovedFrame: number;
    perEndMin: number;
    perLoadHourSquared: number;
  };
  /** Warm-up after a frame stood closed for so long, min. */
  warmUpMin: number;
  warmUpAfterMin: number;
  /** Specimens whose arrival nobody has announced are expected after so many hours; shown as assumed. */
  assumedArrivalHours: number;
  /** An item is away for so many days when it goes for calibration. */
  calibrationVisitDays: number;
  /** `due soon` begins so many days before the due date. */
  dueSoonDays: number;
}

export interface BenchSettings {
  /** Largest error of a shift check, percent of the reference. */
  shiftCheckTolerancePct: number;
  /** A shift check holds for so many hours (8 to 12 is common practice, no source). */
  shiftCheckHours: number;
}

export interface LabSettingsView extends LabSettings {
  version: number;
}
