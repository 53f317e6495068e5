import type { LabSettings } from '#libs/contract/src/index.js';
import { DEFAULT_SETTINGS } from '#libs/matching/src/index.js';
import { DEFAULT_OBJECTIVE } from '#libs/planning/src/index.js';

const WORK_WEEK = [1, 2, 3, 4, 5];

/** What a lab starts with. Durations are common practice, no source; every lab sets its own. */
export const DEFAULT_LAB_SETTINGS: LabSettings = {
  name: 'Materials test lab',
  address: '',
  contact: '',
  timeZone: 'Europe/London',
  shifts: WORK_WEEK.flatMap((weekday) => [
    { weekday, from: '06:00', to: '14:00', name: 'early' },
    { weekday, from: '14:00', to: '22:00', name: 'late' },
  ]),
  freezeMin: 240,
  horizonDays: 28,
  planningSeconds: 3,
  warmUpMin: 15,
  warmUpAfterMin: 480,
  assumedArrivalMin: 1440,
  calibrationVisitMin: 2880,
  shiftCheckValidMin: 720,
  shiftCheckTolerancePct: 1,
  calibrationNoticeDays: 30,
  rampCPerMin: 2,
  soakMin: 30,
  matching: DEFAULT_SETTINGS,
  objective: DEFAULT_OBJECTIVE,
  retention: {
    endedTasksMonths: 1,
    endedSessionsMonths: 3,
    noticesMonths: 12,
    deliveriesMonths: 3,
    idempotencyKeysDays: 2,
  },
  demo: false,
};

/** Stored settings; those added since, or all while nobody has set any, have their defaults. */
export function withDefaults(stored: Partial<LabSettings> | null | undefined): LabSettings {
  return { ...DEFAULT_LAB_SETTINGS, ...stored };
}
