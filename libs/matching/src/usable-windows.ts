import { clipWindows, subtractWindows, unionWindows } from '#libs/calendar/src/index.js';
import { classMeets } from './force-classes.js';
import type { CalibratedQuantity, Calibration, Item, TimeWindow } from './item.js';
import type { Needs } from './needs.js';

/** What a calibration must be good for: quantity, class where one is asked, and the values that it must span. */
export interface CalibrationNeed {
  quantity: CalibratedQuantity;
  standard: string | null;
  className: string | null;
  from: number;
  to: number;
}

/** What the test asks of an item's calibration; null when any calibration in force will do. */
export function calibrationNeedOf(item: Item, needs: Needs): CalibrationNeed | null {
  if (item.kind === 'load-cell') {
    const { standard, className } = needs.forceClass;
    return { quantity: needs.direction, standard, className, from: needs.smallest.value, to: needs.peakHigh.value };
  }
  if (item.kind === 'extensometer' && needs.strain.rule) {
    const { standard, className } = needs.strain.rule;
    const to = needs.strain.extension?.value ?? 0;
    return { quantity: 'extension', standard, className, from: to, to };
  }
  return null;
}

/** Whether one calibration is good for a need. An end that is met exactly counts as met. */
export function isGoodFor(calibration: Calibration, need: CalibrationNeed): boolean {
  return (
    isOfClass(calibration, need) && calibration.from <= need.from * (1 + EDGE) && calibration.to >= need.to * (1 - EDGE)
  );
}

export function isOfClass(calibration: Calibration, { quantity, standard, className }: CalibrationNeed): boolean {
  if (calibration.direction !== quantity) return false;
  return standard === null || className === null || classMeets(calibration, { standard, className });
}

/** Rounding of the sum, not a tolerance of the trade. */
const EDGE = 1e-9;

/**
 * When an item may be used for a test: in service, its calibration for that need in force, not promised elsewhere.
 *
 * @param period half-open, UTC; nothing outside it is returned
 */
export function usableWindows(item: Item, needs: Needs, period: TimeWindow): TimeWindow[] {
  if (item.state !== 'in-service') return [];
  const inForce = calibratedWindows(item, needs, period);
  return item.heldWindows.length === 0 ? inForce : subtractWindows(inForce, item.heldWindows);
}

/** When its calibration is in force for the need; always when it needs none. */
export function calibratedWindows(item: Item, needs: Needs, period: TimeWindow): TimeWindow[] {
  if (!item.needsCalibration) return [period];
  const need = calibrationNeedOf(item, needs);
  const good = need ? item.calibrations.filter((each) => isGoodFor(each, need)) : item.calibrations;
  if (good.some(({ validFromMs, dueMs }) => validFromMs <= period.startMs && dueMs >= period.endMs)) return [period];
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
