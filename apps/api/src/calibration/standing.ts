import type { CalibrationStatus } from '#libs/contract/src/index.js';
import { itemCalibrationStatus } from '#libs/metrology/src/index.js';
import type { CalibrationPeriod, ItemFacts } from '#libs/metrology/src/index.js';
import { standing } from '#libs/records/src/index.js';
import type { CalibrationDates, ItemEntity } from '#libs/records/src/index.js';

/** How the calibration of an item stands, and when it runs out or ran out. */
export interface Standing {
  status: CalibrationStatus;
  dueMs: number | null;
}

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
  const { name, dueMs } = itemCalibrationStatus(itemFacts(item, calibrations), nowMs, noticeDays);
  return { status: name, dueMs };
}

/** What the metrology core wants to know of an item. */
export function itemFacts(
  { needsCalibration, state }: ItemEntity,
  calibrations: readonly CalibrationDates[],
): ItemFacts {
  return { needsCalibration, outOfUse: state === 'out-of-use', directions: periodsByDirection(calibrations) };
}

/** Periods of calibrations, direction by direction. */
function periodsByDirection(calibrations: readonly CalibrationDates[]): CalibrationPeriod[][] {
  const rows = standing(calibrations);
  const directions = [...new Set(rows.flatMap(({ ranges }) => ranges.map(({ direction }) => direction)))];
  return directions.map((direction) =>
    rows
      .filter(({ ranges }) => ranges.some((range) => range.direction === direction))
      .map(({ validFrom, dueAt }) => ({ validFromMs: validFrom.getTime(), dueMs: dueAt.getTime() })),
  );
}
