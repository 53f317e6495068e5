import type { BendingRecipe, ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import type { PreparedAxes } from './prepare-axes.js';
import type { Flag } from './reduction-outcome.js';

/** Deflection over span above which the simple formula is no longer fair (ASTM D790, from memory). */
const MOST_DEFLECTION_SHARE = 0.1;

/**
 * Span over depth above which ASTM D790 corrects for a large deflection: 16, whose tolerance is ±1 (from memory, medium), since a bar that
 * was asked for at 16:1 and measures a little less is still one of 16:1.
 */
const LONG_SPAN = 17;

/**
 * Three-point bending of a rectangle at large deflection D over span L: σ·[1 + 6(D/L)² − 4(h/L)(D/L)]
 * (ASTM D790, from memory). D counts from the corrected zero. Without the correction a large deflection is flagged.
 *
 * @param toeShift what toe compensation takes off x
 * @param peakIndex row of the highest plain stress
 */
export function correctLargeDeflection(
  axes: PreparedAxes,
  recipe: ReductionRecipe,
  { thicknessMm }: SpecimenDimensions,
  { toeShift, peakIndex }: { toeShift: number; peakIndex: number },
): PreparedAxes {
  const { bending, kind } = recipe;
  if (!bending || !kind.startsWith('flexure') || axes.alongPerTravel === null || axes.axes.yName !== 'stress')
    return axes;
  const perSpan = 1 / (axes.alongPerTravel * bending.spanMm);
  const atPeak = (axes.x[peakIndex]! - toeShift) * perSpan;
  if (kind !== 'flexure-3-point' || thicknessMm === undefined || !isCorrected(bending, thicknessMm, atPeak))
    return { ...axes, flags: [...axes.flags, ...largeDeflectionFlags(atPeak)] };
  const slender = thicknessMm / bending.spanMm;
  const y = axes.y.map((stress, at) => {
    const share = Math.max(0, axes.x[at]! - toeShift) * perSpan;
    return stress * (1 + 6 * share * share - 4 * slender * share);
  });
  return { ...axes, y };
}

function isCorrected({ correctLargeDeflection: way, spanMm }: BendingRecipe, depthMm: number, atPeak: number): boolean {
  if (way === 'long-span') return spanMm > LONG_SPAN * depthMm && atPeak > MOST_DEFLECTION_SHARE;
  return way === true;
}

function largeDeflectionFlags(found: number): Flag[] {
  return found > MOST_DEFLECTION_SHARE
    ? [{ code: 'deflection-large', found, allowed: MOST_DEFLECTION_SHARE, unit: '1' }]
    : [];
}
