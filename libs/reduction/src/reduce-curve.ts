import type { Curve } from './curve/curve.js';
import { curveFlags } from './measures/curve-flags.js';
import { doubtSignals, doubtsTouching, flagOf, readsPastStrain } from './measures/doubted.js';
import type { DoubtedAxes } from './measures/doubted.js';
import { findBreak, highestRow, strengthAfterYield } from './measures/find-peak.js';
import { correctLargeDeflection } from './measures/large-deflection.js';
import { findSlopeAndToe } from './measures/find-toe.js';
import { MEASURES } from './measures/list-of-measures.js';
import { loadingOf } from './measures/loadings.js';
import { prepareAxes } from './measures/prepare-axes.js';
import type { PreparedTest } from './measures/prepared-test.js';
import type { Flag, MissingResult, ReducedResult, ReductionOutcome } from './measures/reduction-outcome.js';
import { takeUpFoot } from './measures/take-up.js';
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
  const whole = prepareAxes(curve, recipe, dimensions);
  if ('reason' in whole) return { state: 'refused', reasons: [whole] };
  const axes = recipe.loading === undefined ? whole : loadingOf(whole, recipe.loading);
  if ('reason' in axes) return { state: 'refused', reasons: [axes] };
  const doubted = doubtSignals(axes, curve, recipe);
  const test = prepareTest(curve, recipe, dimensions, doubted);
  const { results, missing } = measureAll(test, doubted);
  const flags = [...test.flags, ...doubted.doubts.map(flagOf), ...curveFlags(test)];
  const { slope, toeShift } = test;
  return {
    state: 'reduced',
    axes: test.axes,
    scales: scalesOf(test, doubted.axes),
    results,
    missing,
    flags,
    slope,
    toeShift,
  };
}

function scalesOf({ y, axes }: PreparedTest, { y: before, xScale, yScale }: DoubtedAxes['axes']) {
  const isBent = y !== before;
  if (axes.xName !== 'strain' || axes.yName !== 'stress' || isBent || !xScale || !yScale) return null;
  return { strain: xScale, stress: yScale };
}

function prepareTest(
  curve: Curve,
  recipe: ReductionRecipe,
  dimensions: SpecimenDimensions,
  { axes: plain, lastStrainRow, falls }: DoubtedAxes,
): PreparedTest & { flags: readonly Flag[] } {
  const slopeAndToe = slopeOf(recipe, plain);
  const { toeShift } = slopeAndToe;
  const upTo = (recipe.peakUpToStrain ?? Infinity) + toeShift;
  const plainPeak = highestRow(plain.x, plain.y, upTo);
  const axes = correctLargeDeflection(plain, recipe, dimensions, { toeShift, peakIndex: plainPeak });
  const { x, y } = axes;
  const highest = axes === plain ? plainPeak : highestRow(x, y, upTo);
  const breakIndex = findBreak(y, highest, recipe);
  const common = { curve, recipe, dimensions, ...axes, ...slopeAndToe, falls, lastStrainRow, breakIndex };
  const { peakIndex, hardens } = recipe.yieldPoint?.strengthAfter
    ? strengthAfterYield({ ...common, peakIndex: highest })
    : { peakIndex: highest, hardens: true };
  const softens: Flag[] = hardens
    ? []
    : [{ code: 'yields-without-hardening', found: y[peakIndex]!, allowed: y[breakIndex]!, unit: axes.axes.yUnit }];
  return { ...common, peakIndex, flags: [...axes.flags, ...softens] };
}

/** The straight part and the corrected zero, both on the rows up to the highest load. */
function slopeOf(recipe: ReductionRecipe, { axes, x, y }: DoubtedAxes['axes']) {
  const peakIndex = highestRow(x, y, recipe.peakUpToStrain ?? Infinity);
  const none = { slope: null, slopeFlags: [], slopePoints: [], toeShift: 0 };
  if (axes.xName === 'row')
    return { ...none, slopeMissing: { reason: 'no-travel-column', what: 'displacementMm' } } as const;
  if (!recipe.slope) {
    const toeShift = recipe.toe.way === 'take-up' ? takeUpFoot({ x, y, peakIndex }) : 0;
    return { ...none, toeShift, slopeMissing: { reason: 'recipe-missing', what: 'slope' } } as const;
  }
  const { slope, toeShift } = findSlopeAndToe({ x, y, peakIndex }, recipe.slope, recipe.toe);
  if (slope.state === 'not-found') return { ...none, toeShift, slopeMissing: slope };
  return { slope: slope.line, slopeFlags: slope.flags, slopePoints: slope.points, slopeMissing: null, toeShift };
}

function measureAll(
  test: PreparedTest,
  { doubts, lastStrainRow }: DoubtedAxes,
): { results: ReducedResult[]; missing: MissingResult[] } {
  const results: ReducedResult[] = [];
  const missing: MissingResult[] = [];
  for (const key of test.recipe.results) {
    for (const outcome of MEASURES[key](test)) {
      if ('reason' in outcome) missing.push({ key, ...outcome });
      else if (readsPastStrain({ key, points: outcome.points }, lastStrainRow))
        missing.push({ key, at: outcome.at, reason: 'extension-ended', what: `row ${lastStrainRow + 1}` });
      else if (isFinite(outcome))
        results.push({
          key,
          ...outcome,
          points: outcome.points.map((point) => ({ ...point, index: point.index + test.firstRow })),
          flags: [...outcome.flags, ...doubtsTouching({ key, points: outcome.points }, doubts)],
        });
      else missing.push({ key, at: outcome.at, reason: 'not-finite', what: key });
    }
  }
  return { results, missing };
}

/** Extreme figures in a file can run over on the way; such a result is none. */
function isFinite({ value, points }: Pick<ReducedResult, 'value' | 'points'>): boolean {
  return Number.isFinite(value) && points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
}
