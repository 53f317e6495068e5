import { clipWindows, subtractWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { CalibrationNeed } from '../ask/calibration-need.js';
import type { Calibration, Item, TimeWindow } from '../register/item.js';

/** Whether one calibration is good for a need. An end that is met exactly counts as met. */
export function isGoodFor(calibration: Calibration, need: CalibrationNeed): boolean {
  return (
    isOfClass(calibration, need) && calibration.from <= need.from * (1 + EDGE) && calibration.to >= need.to * (1 - EDGE)
  );
}

/** Whether a calibration is of the quantity that is asked for, and of a class that is good enough. */
export function isOfClass({ direction, standard, className }: Calibration, need: CalibrationNeed): boolean {
  return direction === need.quantity && (need.meeting[standard]?.includes(className) ?? false);
}

/** Rounding of the sum, not a tolerance of the trade. */
const EDGE = 1e-9;

/**
 * When an item may be used for a test: in service, its calibration for that need in force, not promised elsewhere.
 *
 * @param need null when any calibration in force will do
 * @param whole the period alone, half-open, UTC; it is given back as it is when all of it is usable
 */
export function windowsFor(
  item: Item,
  need: CalibrationNeed | null,
  whole: readonly [TimeWindow],
): readonly TimeWindow[] {
  if (item.state !== 'in-service') return NEVER;
  const inForce = item.needsCalibration ? calibratedWindows(item, need, whole) : whole;
  const [{ startMs, endMs }] = whole;
  const isHeld = item.heldWindows.some((held) => held.startMs < endMs && held.endMs > startMs);
  return isHeld && inForce.length > 0 ? subtractWindows(inForce, item.heldWindows) : inForce;
}

const NEVER: readonly TimeWindow[] = [];

/** When its calibration is in force for the need. */
function calibratedWindows(
  { calibrations }: Item,
  need: CalibrationNeed | null,
  whole: readonly [TimeWindow],
): readonly TimeWindow[] {
  const [period] = whole;
  for (const each of calibrations)
    if (each.validFromMs <= period.startMs && each.dueMs >= period.endMs && (!need || isGoodFor(each, need)))
      return whole;
  const good = need ? calibrations.filter((each) => isGoodFor(each, need)) : calibrations;
  if (good.length === 0) return NEVER;
  if (good.length === 1) return clipped(good[0]!, period);
  const spans = good.map(({ validFromMs, dueMs }) => ({ startMs: validFromMs, endMs: dueMs }));
  return clipWindows(unionWindows(spans), period.startMs, period.endMs);
}

function clipped({ validFromMs, dueMs }: Calibration, period: TimeWindow): TimeWindow[] {
  const startMs = Math.max(validFromMs, period.startMs);
  const endMs = Math.min(dueMs, period.endMs);
  return startMs < endMs ? [{ startMs, endMs }] : [];
}

/** When it is not promised elsewhere. */
export function freeWindows(item: Item, period: TimeWindow): TimeWindow[] {
  return item.heldWindows.length === 0 ? [period] : subtractWindows([period], item.heldWindows);
}
