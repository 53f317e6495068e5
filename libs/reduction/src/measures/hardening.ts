import type { HardeningRecipe } from '../recipe/recipe.js';
import { fitLine } from '../statistics/fit-line.js';
import type { LineFit } from '../statistics/fit-line.js';
import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';

/** n of σ = K·εⁿ in true stress and true strain (ISO 10275): slope of ln σ over ln ε between the bounds, up to the peak. */
export const hardeningExponent: Measure = (test) => hardening(test, (fit) => [fit.slope, '1']);

/** K of the same law, MPa. */
export const hardeningCoefficient: Measure = (test) => hardening(test, (fit) => [Math.exp(fit.intercept), 'MPa']);

function hardening(test: PreparedTest, figure: (fit: LineFit) => [number, string]): Measured[] {
  const recipe = test.recipe.hardening;
  if (!recipe) return lacking('recipe-missing', 'hardening');
  if (test.stressLacks !== null) return lacking('dimension-missing', test.stressLacks);
  if (test.axes.xName !== 'strain' || test.recipe.kind !== 'tension')
    return lacking('no-travel-column', test.strainLacks ?? 'strain');
  if (recipe.strain === 'plastic' && !test.slope) return lacking('slope-missing', test.slopeMissing?.what ?? 'slope');
  const { rows, strains, stresses } = logColumns(test, recipe);
  if (rows.length < 3) return lacking('too-few-points', 'hardening');
  const [value, unit] = figure(fitLine(strains, stresses));
  return measured(value, unit, [pointAt(test, 'from', rows[0]!), pointAt(test, 'to', rows.at(-1)!)]);
}

/** Logarithms of true stress σ(1 + e) and true strain ln(1 + e), the elastic part σ/E taken off where asked. */
function logColumns(
  { x, y, peakIndex, toeShift, slope }: PreparedTest,
  { fromStrain, toStrain, strain }: HardeningRecipe,
) {
  const rows: number[] = [];
  const strains: number[] = [];
  const stresses: number[] = [];
  const give = strain === 'plastic' && slope ? 1 / slope.slope : 0;
  for (let at = 0; at <= peakIndex; at++) {
    const e = x[at]! - toeShift;
    const stress = y[at]! * (1 + e);
    const trueStrain = Math.log1p(e) - stress * give;
    if (!(trueStrain >= fromStrain && trueStrain <= toStrain && trueStrain > 0 && stress > 0)) continue;
    rows.push(at);
    strains.push(Math.log(trueStrain));
    stresses.push(Math.log(stress));
  }
  return { rows, strains, stresses };
}
