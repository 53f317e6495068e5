import type { CalibrationNeed } from '../ask/calibration-need.js';
import type { Calibration, LoadCell, TimeWindow } from '../register/item.js';
import { FAIL, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';
import { isGoodFor, isOfClass } from './usable-windows.js';

/**
 * The cell is calibrated in the direction of the test, to the class that the method needs, over everything from the smallest force
 * that is read to the high end of the band. Whether that calibration is still in force is another rule.
 */
export const verifiedRange = rule({
  code: 'verified-range',
  source: 'ISO 7500-1, ASTM E4: forces used lie within the verified range (ASTM E8 5.1, seen in a secondary copy)',
  checks: [{ sees: ['cell'], judge: ({ cell }, context, report) => judge(cell, context, report) }],
  sentences: {
    'never-verified': ({ first, need }) => `${first} has no calibration in ${need}. Have it calibrated.`,
    'class-too-low': ({ first, need, has }) =>
      `The method asks for ${need}; ${first} holds ${has}. Calibrate it to that class, or agree a lower one.`,
    'below-verified': limit(
      ({ first, need, has }) => `The smallest reading is ${need}; ${first} is verified from ${has}`,
      'Choose a smaller cell, or verify further down.',
    ),
    'above-verified': limit(
      ({ first, need, has }) => `The test reaches ${need}; ${first} is verified to ${has}`,
      'Choose a larger cell, or verify further up.',
    ),
  },
});

function judge(cell: LoadCell, context: Context, report: Report): Outcome {
  const { cellNeed: need, needs, period } = context;
  const good = cell.calibrations.find((each) => isInForce(each, period) && isGoodFor(each, need));
  if (good) return rangeOf(good, need, cell, needs.loadUnit, report);
  const inDirection = relevant(cell.calibrations, period).filter(({ direction }) => direction === need.quantity);
  if (inDirection.length === 0) return report.say(FAIL, 'never-verified', cell, need.quantity, 'none');
  const ofClass = inDirection.filter((each) => isOfClass(each, need));
  if (ofClass.length === 0)
    return report.say(
      FAIL,
      'class-too-low',
      cell,
      () => `${need.standard} class ${need.className}`,
      () => classesOf(inDirection),
    );
  return rangeOf(ofClass.find((each) => isGoodFor(each, need)) ?? widest(ofClass), need, cell, needs.loadUnit, report);
}

/** Low and high end of a verified range; the worse of both counts. */
function rangeOf(
  { from, to }: Calibration,
  need: CalibrationNeed,
  cell: LoadCell,
  unit: string,
  report: Report,
): Outcome {
  return worst(
    report.notBelow('below-verified', need.from, from, unit, cell),
    report.atLeast('above-verified', need.to, to, unit, cell),
  );
}

/** Calibrations that are in force at some time of the period; when there are none, the ones that lapsed. */
export function relevant(calibrations: readonly Calibration[], period: TimeWindow): readonly Calibration[] {
  const inForce = calibrations.filter((each) => isInForce(each, period));
  return inForce.length > 0 ? inForce : calibrations;
}

function isInForce({ validFromMs, dueMs }: Calibration, { startMs, endMs }: TimeWindow): boolean {
  return validFromMs < endMs && dueMs > startMs;
}

/** For people: `ISO 7500-1 class 1, ISO 7500-1 class 2`. */
export function classesOf(calibrations: readonly Calibration[]): string {
  return calibrations.map(({ standard, className }) => `${standard} class ${className}`).join(', ');
}

function widest(calibrations: readonly Calibration[]): Calibration {
  return [...calibrations].sort((a, b) => b.to / b.from - a.to / a.from)[0]!;
}
