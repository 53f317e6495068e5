import type { Curve } from './curve/curve.js';
import { curveFlags } from './measures/curve-flags.js';
import { correctLargeDeflection } from './measures/large-deflection.js';
import { findSlopeAndToe } from './measures/find-toe.js';
import { MEASURES } from './measures/list-of-measures.js';
import { prepareAxes } from './measures/prepare-axes.js';
import type { PreparedAxes } from './measures/prepare-axes.js';
import type { PreparedTest } from './measures/prepared-test.js';
import type { MissingResult, ReducedResult, ReductionOutcome } from './measures/reduction-outcome.js';
import { checkDimensions } from './recipe/check-dimensions.js';
import { checkRecipe } from './recipe/check-recipe.js';
import type { ReductionRecipe } from './recipe/recipe.js';
import type { SpecimenDimensions } from './recipe/specimen-dimensions.js';

/**
 * From a recorded curve to results, by the parameters of the method. Values are in internal units and rounded by
 * nobody. A result that cannot be had is listed with its reason; a curve from which nothing can be had is refused.
 * It does not judge whether the test was valid: flags say what a person should look at.
 */
export function reduceCurve(curve: Curve, recipe: ReductionRecipe, dimensions: SpecimenDimensions): ReductionOutcome {
  const problems = [...checkRecipe(recipe), ...checkDimensions(dimensions)];
  if (problems.length > 0)
    return { state: 'refused', reasons: problems.map(({ sentence }) => ({ reason: 'recipe-wrong', what: sentence })) };
  if (curve.pointCount < 2)
    return { state: 'refused', reasons: [{ reason: 'too-few-points', what: `${curve.pointCount}` }] };
  const axes = prepareAxes(curve, recipe, dimensions);
  if ('reason' in axes) return { state: 'refused', reasons: [axes] };
  const corrected = correctLargeDeflection(axes, recipe, dimensions);
  const test = prepareTest(curve, recipe, dimensions, corrected);
  const { results, missing } = measureAll(test);
  const flags = [...corrected.flags, ...curveFlags(test)];
  return { state: 'reduced', axes: test.axes, results, missing, flags, slope: test.slope, toeShift: test.toeShift };
}

function prepareTest(
  curve: Curve,
  recipe: ReductionRecipe,
  dimensions: SpecimenDimensions,
  axes: PreparedAxes,
): PreparedTest {
  const { x, y } = axes;
  const peakIndex = findPeak(x, y, recipe);
  const common = { curve, recipe, dimensions, ...axes, peakIndex, breakIndex: findBreak(y, peakIndex, recipe) };
  const none = { slope: null, slopeFlags: [], slopePoints: [], toeShift: 0 };
  if (axes.axes.xName === 'row')
    return { ...common, ...none, slopeMissing: { reason: 'no-travel-column', what: 'displacementMm' } };
  if (!recipe.slope) return { ...common, ...none, slopeMissing: { reason: 'recipe-missing', what: 'slope' } };
  const { slope, toeShift } = findSlopeAndToe({ x, y, peakIndex }, recipe.slope, recipe.toe);
  if (slope.state === 'not-found') return { ...common, ...none, toeShift, slopeMissing: slope };
  return {
    ...common,
    slope: slope.line,
    slopeFlags: slope.flags,
    slopePoints: slope.points,
    slopeMissing: null,
    toeShift,
  };
}

/** Row of the highest y, the first of equals, up to the strain that the recipe allows. */
function findPeak(x: Float64Array, y: Float64Array, { peakUpToStrain = Infinity }: ReductionRecipe): number {
  let peak = 0;
  for (let at = 1; at < y.length && x[at]! <= peakUpToStrain; at++) if (y[at]! > y[peak]!) peak = at;
  return peak;
}

/** Last row before the load falls as far as the recipe says, else the last row. */
function findBreak(y: Float64Array, peakIndex: number, recipe: ReductionRecipe): number {
  if (recipe.break.way === 'end-of-curve') return y.length - 1;
  const limit = recipe.break.share * y[peakIndex]!;
  for (let at = peakIndex + 1; at < y.length; at++) if (y[at]! < limit) return at - 1;
  return y.length - 1;
}

function measureAll(test: PreparedTest): { results: ReducedResult[]; missing: MissingResult[] } {
  const results: ReducedResult[] = [];
  const missing: MissingResult[] = [];
  for (const key of test.recipe.results) {
    for (const outcome of MEASURES[key](test)) {
      if ('reason' in outcome) missing.push({ key, ...outcome });
      else if (isFinite(outcome)) results.push({ key, ...outcome });
      else missing.push({ key, at: outcome.at, reason: 'not-finite', what: key });
    }
  }
  return { results, missing };
}

/** Extreme figures in a file can run over on the way; such a result is none. */
function isFinite({ value, points }: Pick<ReducedResult, 'value' | 'points'>): boolean {
  return Number.isFinite(value) && points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
}
