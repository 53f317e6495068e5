import { classesThatMeet } from '#libs/accuracy/src/index.js';
import type { CalibratedQuantity, Item } from '../register/item.js';
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

/** What the test needs of an item's calibration; null when any calibration in force will do. */
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
