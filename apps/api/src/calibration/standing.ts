import type { CalibrationStatus } from '#libs/contract/src/index.js';
import { calibrationStatus } from '#libs/metrology/src/index.js';
import type { CalibrationPeriod } from '#libs/metrology/src/index.js';
import { standing } from '#libs/records/src/index.js';
import type { CalibrationDates, ItemEntity } from '#libs/records/src/index.js';

/** How the calibration of an item stands, and when it runs out or ran out. */
export interface Standing {
  status: CalibrationStatus;
  dueMs: number | null;
}

/** The most urgent first: what is wrong with one direction is wrong with the item. */
const URGENCY: readonly CalibrationStatus[] = ['out-of-use', 'never', 'overdue', 'due-soon', 'in-force', 'not-needed'];

/**
 * Status from dates alone, at an instant. Where directions are calibrated apart, the worst of them counts.
 *
 * @param noticeDays a calibration due within so many days is `due-soon`
 */
export function standingOf(
  item: ItemEntity,
  calibrations: readonly CalibrationDates[],
  nowMs: number,
  noticeDays: number,
): Standing {
  const facts = { needsCalibration: item.needsCalibration, outOfUse: item.state === 'out-of-use' };
  const apart = periodsByDirection(calibrations);
  const each = (apart.length > 0 ? apart : [[]]).map((periods) =>
    calibrationStatus({ ...facts, calibrations: periods }, nowMs, noticeDays),
  );
  const due = each.map(({ dueMs }) => dueMs).filter((dueMs) => dueMs !== null);
  const status = URGENCY.find((urgent) => each.some(({ name }) => name === urgent))!;
  return { status, dueMs: due.length > 0 ? Math.min(...due) : null };
}

/** Periods of calibrations, direction by direction. */
export function periodsByDirection(calibrations: readonly CalibrationDates[]): CalibrationPeriod[][] {
  const rows = standing(calibrations);
  const directions = [...new Set(rows.flatMap(({ ranges }) => ranges.map(({ direction }) => direction)))];
  return directions.map((direction) =>
    rows
      .filter(({ ranges }) => ranges.some((range) => range.direction === direction))
      .map(({ validFrom, dueAt }) => ({ validFromMs: validFrom.getTime(), dueMs: dueAt.getTime() })),
  );
}
