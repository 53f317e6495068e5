import { classesThatMeet } from '#libs/accuracy/src/index.js';
import { clipWindows, subtractWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { CalibratedQuantity, Calibration, Item, TimeWindow } from './item.js';
import type { Needs } from './needs.js';

/** What a calibration must be good for: quantity, class, and the values that it must span. */
export interface CalibrationNeed {
  quantity: CalibratedQuantity;
  standard: string;
  className: string;
  /** Classes that are good enough, by their standard. */
  meeting: Readonly<Record<string, readonly string[]>>;
  from: number;
  to: number;
}

/** What the test asks of an item's calibration; null when any calibration in force will do. */
export function calibrationNeedOf(item: Item, needs: Needs): CalibrationNeed | null {
  if (item.kind === 'load-cell') return cellNeedOf(needs);
  return item.kind === 'extensometer' ? extensometerNeedOf(needs) : null;
}

/** The same for every cell. */
export function cellNeedOf({ forceClass, direction, smallest, peakHigh }: Needs): CalibrationNeed {
  const { standard, className } = forceClass;
  return {
    quantity: direction,
    standard,
    className,
    meeting: classesThatMeet(forceClass, null),
    from: smallest.value,
    to: peakHigh.value,
  };
}

/** The same for every extensometer. */
export function extensometerNeedOf({ strain }: Needs): CalibrationNeed | null {
  const { rule, extension, smallestExtension, strainLengthMm } = strain;
  if (!rule) return null;
  const { standard, className } = rule;
  const to = extension?.value ?? 0;
  const from = smallestExtension?.value ?? to;
  const use = strainLengthMm
    ? { gaugeLengthMm: strainLengthMm, strainFrom: from / strainLengthMm, strainTo: to / strainLengthMm }
    : null;
  return { quantity: 'extension', standard, className, meeting: classesThatMeet(rule, use), from, to };
}

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
 * @param period half-open, UTC; nothing outside it is returned
 */
export function usableWindows(item: Item, needs: Needs, period: TimeWindow): readonly TimeWindow[] {
  return windowsFor(item, calibrationNeedOf(item, needs), [period]);
}

/**
 * The same for a need that was worked out before.
 *
 * @param whole the period alone, which is given back as it is when all of it is usable
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
