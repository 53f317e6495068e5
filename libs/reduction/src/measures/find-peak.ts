import type { ReductionRecipe } from '../recipe/recipe.js';
import { findUpperYield } from './yield-point.js';
import type { YieldTest } from './yield-point.js';

/**
 * Row of the highest y, the first of equals.
 *
 * @param upTo last x that is looked at
 */
export function highestRow(x: Float64Array, y: Float64Array, upTo: number): number {
  let peak = 0;
  for (let at = 1; at < y.length && x[at]! <= upTo; at++) if (y[at]! > y[peak]!) peak = at;
  return peak;
}

/** Last row before the load falls as far as the recipe says, else the last row. */
export function findBreak(y: Float64Array, peakIndex: number, recipe: ReductionRecipe): number {
  if (recipe.break.way === 'end-of-curve') return y.length - 1;
  const limit = recipe.break.share * y[peakIndex]!;
  for (let at = peakIndex + 1; at < y.length; at++) if (y[at]! < limit) return at - 1;
  return y.length - 1;
}

/**
 * The strength of a metal with a yield point is its highest stress once it hardens, even where the upper yield is higher
 * (ISO 6892-1:2019, 3.9: Fm after the beginning of work-hardening; from memory, high). The curve hardens where it rises from its
 * lowest after the upper yield; where it only falls, the upper yield stays its highest.
 *
 * @returns the row of the strength, and whether hardening was seen
 */
export function strengthAfterYield(test: YieldTest): { peakIndex: number; hardens: boolean } {
  const { y, peakIndex, breakIndex } = test;
  const upper = findUpperYield(test);
  if (upper !== peakIndex) return { peakIndex, hardens: true };
  let low = upper;
  let best = upper;
  let bestRise = 0;
  // The highest rise from the lowest so far: what falls from the upper yield to the fracture never counts as hardening.
  for (let at = upper + 1; at <= breakIndex; at++) {
    if (y[at]! < y[low]!) low = at;
    else if (y[at]! - y[low]! > bestRise) [best, bestRise] = [at, y[at]! - y[low]!];
  }
  return bestRise > LEAST_RISE * y[upper]! ? { peakIndex: best, hardens: true } : { peakIndex: upper, hardens: false };
}

/** A rise of the plateau itself is no hardening (common practice, no source). */
const LEAST_RISE = 0.02;
