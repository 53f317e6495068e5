import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import { windowsInForce } from './windows-in-force.js';
import type { CalibrationPeriod } from './windows-in-force.js';

export type CalibrationStatusName = 'not-needed' | 'in-force' | 'due-soon' | 'overdue' | 'never' | 'out-of-use';

export interface CalibrationFacts {
  needsCalibration: boolean;
  /** Taken out of use by somebody, whatever its dates say. */
  outOfUse: boolean;
  calibrations: readonly CalibrationPeriod[];
}

export interface CalibrationStatus {
  name: CalibrationStatusName;
  /** When it runs out, or ran out, UTC ms; null when it never was in force or needs none. */
  dueMs: number | null;
}

/** What a lab starts with (common practice, no source). */
export const DUE_SOON_DAYS = 30;

/**
 * Status of an item at an instant, from its dates alone: a calibration is in force until the instant at which it is due,
 * and overdue from that instant on. `due-soon` is in force with at most `dueSoonDays` to go.
 *
 * @param dueSoonDays at least 0
 */
export function calibrationStatus(
  facts: CalibrationFacts,
  nowMs: number,
  dueSoonDays = DUE_SOON_DAYS,
): CalibrationStatus {
  const begun = windowsInForce(facts.calibrations).filter(({ startMs }) => startMs <= nowMs);
  const dueMs = begun.at(-1)?.endMs ?? null;
  if (facts.outOfUse) return { name: 'out-of-use', dueMs };
  if (!facts.needsCalibration) return { name: 'not-needed', dueMs: null };
  if (dueMs === null) return { name: 'never', dueMs };
  if (dueMs <= nowMs) return { name: 'overdue', dueMs };
  return { name: dueMs - nowMs <= dueSoonDays * MS_PER_DAY ? 'due-soon' : 'in-force', dueMs };
}

export interface ItemFacts extends Omit<CalibrationFacts, 'calibrations'> {
  /** Its calibrations, direction by direction where directions are calibrated apart. */
  directions: readonly (readonly CalibrationPeriod[])[];
}

/** The most urgent first: what is wrong with one direction is wrong with the item. */
const URGENCY: readonly CalibrationStatusName[] = [
  'out-of-use',
  'never',
  'overdue',
  'due-soon',
  'in-force',
  'not-needed',
];

/** The same for an item whose directions are calibrated apart: the worst of them counts, and the first that runs out. */
export function itemCalibrationStatus(
  { directions, ...facts }: ItemFacts,
  nowMs: number,
  dueSoonDays = DUE_SOON_DAYS,
): CalibrationStatus {
  const each = (directions.length > 0 ? directions : [[]]).map((calibrations) =>
    calibrationStatus({ ...facts, calibrations }, nowMs, dueSoonDays),
  );
  const due = each.map(({ dueMs }) => dueMs).filter((dueMs) => dueMs !== null);
  const name = URGENCY.find((urgent) => each.some((one) => one.name === urgent))!;
  return { name, dueMs: due.length > 0 ? Math.min(...due) : null };
}
