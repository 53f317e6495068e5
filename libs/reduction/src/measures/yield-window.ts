import type { SlopeRecipe } from '../recipe/recipe.js';
import { placeFallingToLine } from './crossings.js';
import { findSlope } from './find-slope.js';
import type { Loading } from './find-slope.js';

/** The offset that is taken as the yield (ISO 6892-1 Rp0.2). */
const OFFSET = 0.002;
/** Shares of the peak that stand in for the yield at first; the smallest that gives a line is taken, since soft metals harden far above it. */
const FIRST_GUESSES = [0.125, 0.25, 0.5, 1] as const;
/** The yield rests once it moves by less than this share. */
const RESTS = 1e-4;
const MOST_ROUNDS = 25;

/**
 * Bounds that are shares of the yield, as bounds of stress: the slope leads to an offset yield, that to new bounds, until both
 * rest. A curve that ends before the offset is reached has its peak for the yield.
 */
export function yieldWindow(loading: Loading, recipe: SlopeRecipe): SlopeRecipe {
  const peak = loading.y[loading.peakIndex]!;
  const windowOf = (yieldStress: number): SlopeRecipe => ({
    way: recipe.way,
    bounds: { over: 'stress', from: recipe.bounds.from * yieldStress, to: recipe.bounds.to * yieldStress },
  });
  for (const share of FIRST_GUESSES) {
    let found = yieldOver(loading, windowOf(share * peak));
    for (let round = 0; found !== null && round < MOST_ROUNDS; round++) {
      const next = yieldOver(loading, windowOf(found));
      if (next === null || Math.abs(next - found) <= RESTS * found) return windowOf(next ?? found);
      found = next;
    }
    if (found !== null) return windowOf(found);
  }
  return windowOf(peak);
}

/** The offset yield that the line over this window leads to; null where there is no sound line or the offset is not reached. */
function yieldOver(loading: Loading, recipe: SlopeRecipe): number | null {
  const slope = findSlope(loading, recipe, 0);
  if (slope.state === 'not-found' || slope.flags.some(({ code }) => code === 'slope-window-short')) return null;
  const { line } = slope;
  const { x, y, peakIndex } = loading;
  const place = placeFallingToLine(x, y, line.slope, line.footX + OFFSET, line.toIndex, peakIndex);
  return place && Math.min(place.y, y[peakIndex]!);
}
