import { broadPeakFlags, peakFlags } from './peak-flags.js';
import { ofPlasticStrain } from './sensitivities.js';
import type { Flag, ResultPoint } from './reduction-outcome.js';
import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';

type Spot = 'peak' | 'break';

/** Strain at the peak, fraction, after toe compensation (ISO 6892-1 Agt, ISO 527 εM). */
export const strainAtPeak: Measure = (test) => strainAt(test, 'peak');

/** Strain at break, fraction, after toe compensation (ISO 6892-1 At, ISO 527 εB). */
export const strainAtBreak: Measure = (test) => strainAt(test, 'break');

/** Ag = ΔLm/Le − Rm/mE, fraction (ISO 6892-1). */
export const plasticStrainAtPeak: Measure = (test) => plasticStrainAt(test, 'peak');

/** A from the extensometer: At less the elastic part at break, fraction (ISO 6892-1). */
export const plasticStrainAtBreak: Measure = (test) => plasticStrainAt(test, 'break');

/** Stress at break, MPa. */
export const stressAtBreak: Measure = (test) => {
  if (test.stressLacks !== null) return lacking('dimension-missing', test.stressLacks);
  return measured(test.y[test.breakIndex]!, test.axes.yUnit, [spotOf(test, 'break')], breakFlags(test));
};

/** Travel in mm (angle in degrees) from the first row to the peak; for a component, where the travel is the result. */
export const travelAtPeak: Measure = (test) => {
  if (test.alongPerTravel === null) return lacking('no-travel-column', 'displacementMm');
  const unit = test.curve.angleDeg && test.recipe.kind === 'torsion' ? '°' : 'mm';
  const travel = (test.x[test.peakIndex]! - test.toeShift) / test.alongPerTravel;
  return measured(travel, unit, [spotOf(test, 'peak')], whereAtPeak(test));
};

function strainAt(test: PreparedTest, spot: Spot): Measured[] {
  if (test.axes.xName === 'row') return lacking('no-travel-column', test.strainLacks ?? 'displacementMm');
  if (test.strainLacks !== null) return lacking('dimension-missing', test.strainLacks);
  if (test.axes.xUnit !== 'mm/mm') return lacking('does-not-apply', test.recipe.kind);
  const point = spotOf(test, spot);
  return measured(
    point.x - test.toeShift,
    test.axes.xUnit,
    [point],
    spot === 'break' ? breakFlags(test) : whereAtPeak(test),
  );
}

function plasticStrainAt(test: PreparedTest, spot: Spot): Measured[] {
  const { slope, slopeMissing, toeShift, slopePoints } = test;
  if (!slope) return lacking('slope-missing', slopeMissing?.what ?? 'slope');
  const [total] = strainAt(test, spot);
  if (!total || 'reason' in total) return total ? [total] : [];
  const point = spotOf(test, spot);
  const elastic = point.y / slope.slope;
  const plastic = point.x - toeShift - elastic;
  const sensitivity = ofPlasticStrain(elastic, plastic);
  const found = measured(plastic, test.axes.xUnit, [point, ...slopePoints], total.flags);
  return plastic > 0 ? found.map((each) => ({ ...each, sensitivity })) : found;
}

function spotOf(test: PreparedTest, spot: Spot): ResultPoint {
  return pointAt(test, spot, spot === 'peak' ? test.peakIndex : test.breakIndex);
}

function whereAtPeak(test: PreparedTest): Flag[] {
  return [...peakFlags(test), ...broadPeakFlags(test)];
}

/** The end of the curve stood in for the break although the load had not fallen as the recipe says. */
function breakFlags({ recipe, y, breakIndex, peakIndex, axes }: PreparedTest) {
  if (recipe.break.way !== 'load-drop' || breakIndex < y.length - 1) return [];
  const allowed = recipe.break.share * y[peakIndex]!;
  return [{ code: 'load-still-high-at-end' as const, found: y[breakIndex]!, allowed, unit: axes.yUnit }];
}
