import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure, PreparedTest } from './prepared-test.js';
import type { Flag } from './reduction-outcome.js';

/** ISO 6892-1: a drop of at least 0.5 %, not exceeded within the next 0.05 % of strain (from memory). */
const STANDARD_DROP = { dropShare: 0.005, lastingStrain: 0.0005 };
/** At the very peak a drop counts as yielding only this early, else it is necking (common practice, no source). */
const LATEST_YIELD_STRAIN = 0.01;

/** ReH, MPa: the highest stress before the first drop that lasts (ISO 6892-1). */
export const upperYield: Measure = (test) => {
  if (test.stressLacks !== null) return lacking('dimension-missing', test.stressLacks);
  const upper = findUpperYield(test);
  if (upper === null) return lacking('no-yield-drop', 'drop after yield');
  return measured(test.y[upper]!, test.axes.yUnit, [pointAt(test, 'upper-yield', upper)], coarseFlags(test, upper));
};

/** Rows so far apart at ReH, as a share of it, that its top may lie between them (common practice, no source). */
const MOST_STEP_SHARE = 0.01;

function coarseFlags({ y }: PreparedTest, upper: number): Flag[] {
  // The row after the top may be the first that is kept, so that the step before it tells how fast the load rose.
  const steps = [upper, upper - 1].filter((at) => at > 0).map((at) => y[at]! - y[at - 1]!);
  const found = Math.max(0, ...steps) / y[upper]!;
  return found > MOST_STEP_SHARE ? [{ code: 'coarse-at-yield', found, allowed: MOST_STEP_SHARE, unit: '1' }] : [];
}

/** ReL, MPa: the lowest stress while yielding, leaving out the transient just after ReH (ISO 6892-1). */
export const lowerYield: Measure = (test) => {
  if (test.stressLacks !== null) return lacking('dimension-missing', test.stressLacks);
  const upper = findUpperYield(test);
  if (upper === null) return lacking('no-yield-drop', 'drop after yield');
  const end = endOfYielding(test, upper);
  const lower = lowestRow(test.y, endOfTransient(test, upper, end), end);
  return measured(test.y[lower]!, test.axes.yUnit, [
    pointAt(test, 'lower-yield', lower),
    pointAt(test, 'upper-yield', upper),
  ]);
};

/** What the yield point is looked for in. */
export type YieldTest = Pick<PreparedTest, 'x' | 'y' | 'recipe' | 'peakIndex' | 'breakIndex' | 'toeShift' | 'falls'>;

function dropOf({ recipe }: Pick<PreparedTest, 'recipe'>) {
  return recipe.yieldPoint ?? STANDARD_DROP;
}

/** Row of the highest stress before the first drop that lasts; null where there is none. A grip that slips is no yielding. */
export function findUpperYield(test: YieldTest): number | null {
  const { y, x, breakIndex, peakIndex, toeShift } = test;
  const { dropShare } = dropOf(test);
  let top = 0;
  for (let at = 1; at <= breakIndex; at++) {
    if (y[at]! > y[top]!) top = at;
    else if (test.falls.some((fall) => fall.top === top && at < fall.back)) continue;
    else if (y[at]! <= y[top]! * (1 - dropShare) && y[top]! > y[peakIndex]! / 2 && lasts(test, top, at)) {
      const isNecking = top === peakIndex && x[top]! - toeShift > LATEST_YIELD_STRAIN;
      return isNecking ? null : top;
    }
  }
  return null;
}

/** Whether the stress stays below the top for the strain that the recipe asks. */
function lasts(test: YieldTest, top: number, from: number): boolean {
  const { x, y, breakIndex } = test;
  const until = x[top]! + dropOf(test).lastingStrain;
  for (let at = from; at <= breakIndex; at++) {
    if (y[at]! > y[top]!) return false;
    if (x[at]! >= until) return true;
  }
  return false;
}

/** Yielding ends where the stress first passes ReH again, at the strength where that lies below ReH, or at the break. */
function endOfYielding({ y, breakIndex, peakIndex }: PreparedTest, upper: number): number {
  const until = peakIndex > upper ? peakIndex : breakIndex;
  for (let at = upper + 1; at <= until; at++) if (y[at]! > y[upper]!) return at - 1;
  return until;
}

/**
 * The first dip after ReH is a transient when the stress recovers from it and falls again: then yielding is judged
 * from the top of that recovery. A dip from which the stress only rises is the lower yield itself.
 */
function endOfTransient(test: PreparedTest, upper: number, end: number): number {
  const { y } = test;
  const step = (dropOf(test).dropShare / 4) * y[upper]!;
  let dip = upper;
  let recovery = -1;
  for (let at = upper + 1; at <= end; at++) {
    if (recovery < 0 && y[at]! < y[dip]!) dip = at;
    else if (recovery < 0 && y[at]! > y[dip]! + step) recovery = at;
    else if (recovery >= 0 && y[at]! > y[recovery]!) recovery = at;
    else if (recovery >= 0 && y[at]! < y[recovery]! - step) return recovery;
  }
  return upper;
}

function lowestRow(y: Float64Array, from: number, to: number): number {
  let lowest = from;
  for (let at = from; at <= to; at++) if (y[at]! < y[lowest]!) lowest = at;
  return lowest;
}
