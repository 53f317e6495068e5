import type { ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import type { PreparedAxes } from './prepare-axes.js';
import type { Flag } from './reduction-outcome.js';

/** Deflection over span above which the simple formula is no longer fair (ASTM D790, from memory). */
const MOST_DEFLECTION_SHARE = 0.1;

/**
 * Three-point bending of a rectangle at large deflection D over span L: σ·[1 + 6(D/L)² − 4(h/L)(D/L)]
 * (ASTM D790, from memory). Without the correction a large deflection is flagged.
 */
export function correctLargeDeflection(
  axes: PreparedAxes,
  recipe: ReductionRecipe,
  { thicknessMm }: SpecimenDimensions,
): PreparedAxes {
  const { bending, kind } = recipe;
  if (!bending || !kind.startsWith('flexure') || axes.alongPerTravel === null || axes.axes.yName !== 'stress')
    return axes;
  const isCorrected =
    bending.correctLargeDeflection === true && kind === 'flexure-3-point' && thicknessMm !== undefined;
  const perSpan = 1 / (axes.alongPerTravel * bending.spanMm);
  if (!isCorrected) return { ...axes, flags: [...axes.flags, ...largeDeflectionFlags(axes, perSpan)] };
  const slender = thicknessMm / bending.spanMm;
  const y = axes.y.map((stress, at) => {
    const share = axes.x[at]! * perSpan;
    return stress * (1 + 6 * share * share - 4 * slender * share);
  });
  return { ...axes, y };
}

function largeDeflectionFlags({ x }: PreparedAxes, perSpan: number): Flag[] {
  let most = 0;
  for (const along of x) most = Math.max(most, along);
  const found = most * perSpan;
  return found > MOST_DEFLECTION_SHARE
    ? [{ code: 'deflection-large', found, allowed: MOST_DEFLECTION_SHARE, unit: '1' }]
    : [];
}
