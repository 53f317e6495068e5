import type { SlopeRecipe, ToeRecipe } from '../recipe/recipe.js';
import { fitLine } from '../statistics/fit-line.js';
import { HAIR, findSlope } from './find-slope.js';
import type { Loading, SlopeFound } from './find-slope.js';
import type { SlopeLine } from './reduction-outcome.js';
import { takeUpFoot } from './take-up.js';
import { yieldWindow } from './yield-window.js';
import { WindowSums } from './window-sums.js';

const MOST_ROUNDS = 50;

/**
 * The slope and the shift of the toe together. Strain bounds count from the corrected zero, so that slope and foot
 * are found in turns until the foot rests. The steepest line of a curve that bends over from its start meets zero before
 * the first strain: it has no slack to take out, and its zero stays.
 */
export function findSlopeAndToe(
  loading: Loading,
  asked: SlopeRecipe,
  toe: ToeRecipe,
): { slope: SlopeFound; toeShift: number } {
  const recipe = asked.bounds.over === 'yield-share' ? yieldWindow(loading, asked) : asked;
  if (toe.way === 'take-up') {
    const foot = takeUpFoot(loading);
    return { slope: findSlope(loading, recipe, foot), toeShift: foot };
  }
  const found = toe.way === 'none' ? null : slopeAndFoot(loading, recipe, toe);
  const bendsOver = found !== null && toe.way === 'steepest' && found.toeShift < loading.x[0]!;
  return found && !bendsOver ? found : { slope: findSlope(loading, recipe, 0), toeShift: 0 };
}

function slopeAndFoot(
  loading: Loading,
  recipe: SlopeRecipe,
  toe: Exclude<ToeRecipe, { way: 'none' | 'take-up' }>,
): { slope: SlopeFound; toeShift: number } {
  const steepest = toe.way === 'steepest' ? steepestLine(loading, toe.spanShare) : null;
  if (steepest) return { slope: findSlope(loading, recipe, steepest.footX), toeShift: steepest.footX };
  let foot = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const slope = findSlope(loading, recipe, foot);
    if (slope.state === 'not-found') return { slope, toeShift: 0 };
    if (Math.abs(slope.line.footX - foot) <= HAIR * Math.abs(loading.x[loading.peakIndex]!))
      return { slope, toeShift: slope.line.footX };
    foot = slope.line.footX;
  }
  return { slope: findSlope(loading, recipe, foot), toeShift: foot };
}

/**
 * The steepest least-squares line over `spanShare` of the x at the peak (ASTM D638, Annex A1: the tangent at the
 * greatest slope). Sums run along with the window, so that a long curve costs one pass.
 */
export function steepestLine({ x, y, peakIndex }: Loading, spanShare: number): SlopeLine | null {
  const width = spanShare * (x[peakIndex]! - x[0]!);
  const sums = new WindowSums(x, y, peakIndex);
  let best: [number, number] | null = null;
  let bestSlope = 0;
  let last = 0;
  for (let first = 0; first < peakIndex; first++) {
    while (last < peakIndex && x[last]! - x[first]! < width) last++;
    if (x[last]! - x[first]! < width * (1 - HAIR)) break;
    const slope = last - first < 2 ? 0 : sums.slope(first, last);
    if (slope > bestSlope) [best, bestSlope] = [[first, last], slope];
  }
  if (!best) return null;
  const { slope, intercept, rSquared } = fitLine(x, y, best[0], best[1] + 1);
  return { slope, footX: -intercept / slope, fromIndex: best[0], toIndex: best[1], rSquared };
}
