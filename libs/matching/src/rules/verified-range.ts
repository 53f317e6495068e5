import type { Calibration, LoadCell, TimeWindow } from '../item.js';
import { isGoodFor, isOfClass } from '../usable-windows.js';
import type { CalibrationNeed } from '../usable-windows.js';
import { atLeast, notBelow, reaches, told, worse } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/**
 * The cell is calibrated in the direction of the test, to the class that the method needs, over everything from the smallest force
 * that is read to the high end of the band. Whether that calibration is still in force is another rule.
 */
export const verifiedRange: Rule = {
  code: 'verified-range',
  source: 'ISO 7500-1, ASTM E4: forces used lie within the verified range (ASTM E8 5.1, seen in a secondary copy)',
  checks: [
    {
      sees: ['cell'],
      judge: ({ cell }, context) => judgeRange(cell, context),
      passes: ({ cell }, context) => isVerified(cell, context),
    },
  ],
};

/** By a calibration that is in force; what lapsed is left to the finding. */
function isVerified({ calibrations }: LoadCell, { cellNeed: need, period }: Context): boolean {
  for (const each of calibrations) {
    if (isInForce(each, period) && isGoodFor(each, need))
      return reaches(need.from, each.from) && reaches(each.to, need.to);
  }
  return false;
}

function isInForce({ validFromMs, dueMs }: Calibration, { startMs, endMs }: TimeWindow): boolean {
  return validFromMs < endMs && dueMs > startMs;
}

function judgeRange(cell: LoadCell, context: Context): Finding {
  const { cellNeed: need } = context;
  const inDirection = relevant(cell.calibrations, context).filter(({ direction }) => direction === need.quantity);
  if (inDirection.length === 0) return told('fail', 'never-verified', [cell.id], need.quantity, 'none');
  const ofClass = inDirection.filter((each) => isOfClass(each, need));
  if (ofClass.length === 0) {
    const held = inDirection.map(({ standard, className }) => `${standard} class ${className}`).join(', ');
    return told('fail', 'class-too-low', [cell.id], `${need.standard} class ${need.className}`, held);
  }
  const good = ofClass.find((each) => isGoodFor(each, need));
  return rangeFinding(cell, need, good ?? widest(ofClass), context);
}

/** Low and high end of the range; the worse of both counts. */
function rangeFinding(cell: LoadCell, need: CalibrationNeed, { from, to }: Calibration, { needs }: Context): Finding {
  return worse(
    notBelow('below-verified', [cell.id], need.from, from, needs.loadUnit),
    atLeast('above-verified', [cell.id], need.to, to, needs.loadUnit),
  )!;
}

/** Calibrations that are in force at some time of the period; when there are none, the ones that lapsed. */
function relevant(calibrations: readonly Calibration[], { period }: Context): readonly Calibration[] {
  const inForce = calibrations.filter((each) => isInForce(each, period));
  return inForce.length > 0 ? inForce : calibrations;
}

function widest(calibrations: readonly Calibration[]): Calibration {
  return [...calibrations].sort((a, b) => b.to / b.from - a.to / a.from)[0]!;
}
