import type { Curve } from '../curve/curve.js';
import type { ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import { correctLargeDeflection } from './large-deflection.js';
import { prepareAxes } from './prepare-axes.js';
import type { CurveAxes, ReductionRefusal } from './reduction-outcome.js';

/** A curve in the axes of its results, thin enough to draw. */
export interface DrawnCurve {
  readonly axes: CurveAxes;
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/**
 * The curve as the points of its results see it (turned and scaled, before toe compensation), thinned for a picture.
 *
 * @param mostPoints at least 4
 */
export function drawCurve(
  curve: Curve,
  recipe: ReductionRecipe,
  dimensions: SpecimenDimensions,
  mostPoints: number,
): DrawnCurve | ReductionRefusal {
  if (curve.pointCount < 2) return { reason: 'too-few-points', what: `${curve.pointCount}` };
  const prepared = prepareAxes(curve, recipe, dimensions);
  if ('reason' in prepared) return prepared;
  const { axes, x, y } = correctLargeDeflection(prepared, recipe, dimensions);
  const rows = rowsToDraw(y, mostPoints);
  return { axes, x: rows.map((row) => x[row]!), y: rows.map((row) => y[row]!) };
}

/** Rows that keep the picture: the first and the last, and of each stretch between the lowest and the highest. */
export function rowsToDraw(y: Float64Array, mostPoints: number): number[] {
  if (y.length <= mostPoints) return Array.from(y, (_, row) => row);
  const stretches = Math.max(1, (mostPoints - 2) >> 1);
  const rows = new Set([0, y.length - 1]);
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.floor((stretch * y.length) / stretches);
    const to = Math.floor(((stretch + 1) * y.length) / stretches);
    const [lowest, highest] = extremesBetween(y, from, to);
    rows.add(lowest).add(highest);
  }
  return [...rows].sort((a, b) => a - b);
}

function extremesBetween(y: Float64Array, from: number, to: number): [number, number] {
  let [lowest, highest] = [from, from];
  for (let row = from; row < to; row++) {
    if (y[row]! < y[lowest]!) lowest = row;
    if (y[row]! > y[highest]!) highest = row;
  }
  return [lowest, highest];
}
