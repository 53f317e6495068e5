import { lacking, measured } from './prepared-test.js';
import type { Measure, PreparedTest } from './prepared-test.js';
import type { Flag, FlagCode } from './reduction-outcome.js';

/** Slope of stress over strain, MPa: Young's, flexural, compressive or shear modulus, by the recipe's way and bounds. */
export const modulus: Measure = (test) => {
  if (test.stressLacks !== null) return lacking('dimension-missing', test.stressLacks);
  if (test.strainLacks !== null)
    return lacking(test.axes.xName === 'row' ? 'no-travel-column' : 'dimension-missing', test.strainLacks);
  if (test.axes.yName !== 'stress' || test.axes.xUnit !== 'mm/mm') return lacking('does-not-apply', test.recipe.kind);
  return slopeResult(test, 'MPa');
};

/** Slope of the load over the travel of a component: N/mm, or N·m per degree in torsion. */
export const stiffness: Measure = (test) => {
  const { alongPerTravel, stressPerLoad, curve, recipe } = test;
  if (alongPerTravel === null) return lacking('no-travel-column', 'displacementMm');
  if (stressPerLoad === null) return lacking('no-load-column', 'forceN');
  const unit = recipe.kind === 'torsion' && curve.angleDeg ? 'N·m/°' : 'N/mm';
  return slopeResult(test, unit, alongPerTravel / stressPerLoad);
};

function slopeResult(test: PreparedTest, unit: string, factor = 1) {
  const { slope, slopeMissing, slopePoints, slopeFlags } = test;
  if (!slope) return lacking(slopeMissing?.reason ?? 'slope-missing', slopeMissing?.what ?? 'slope');
  return measured(slope.slope * factor, unit, slopePoints, [
    ...slopeFlags,
    ...crossheadFlags(test, 'slope-from-crosshead'),
  ]);
}

/** Strain from the crosshead holds the give of the whole load train, so that a modulus comes out low and an offset is met early. */
export function crossheadFlags({ isCrosshead, axes }: PreparedTest, code: FlagCode): Flag[] {
  return isCrosshead && axes.xName === 'strain' ? [{ code, found: 1, allowed: 0, unit: '1' }] : [];
}
