import type { Flag } from './reduction-outcome.js';
import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure, PreparedTest } from './prepared-test.js';

/** Rows in a row at the very peak from which a clipped signal is suspected (common practice, no source). */
const FLAT_ROWS = 3;
/** A peak in so last a part of the record, … (common practice, no source) */
const END_SHARE = 0.03;
/** … after which the load has not fallen to this share of it, may not be the highest (common practice, no source). */
const STILL_HIGH = 0.5;

/** Highest force, N (torque, N·m, in torsion): ISO 6892-1 Fm, the highest of the whole curve up to the recipe's strain. */
export const peakLoad: Measure = (test) => {
  const { peakIndex, plainY, stressPerLoad, recipe } = test;
  if (stressPerLoad === null) return lacking('no-load-column', 'forceN');
  const unit = recipe.kind === 'torsion' ? 'N·m' : 'N';
  return measured(plainY[peakIndex]! / stressPerLoad, unit, [pointAt(test, 'peak', peakIndex)], peakFlags(test));
};

/** Highest stress, MPa (Rm, σM, flexural strength, lap shear strength, torsional strength). */
export const peakStress: Measure = (test) => {
  if (test.stressLacks !== null) return lacking('dimension-missing', test.stressLacks);
  if (test.axes.yName === 'load') return lacking('does-not-apply', test.recipe.kind);
  return measured(test.y[test.peakIndex]!, test.axes.yUnit, [pointAt(test, 'peak', test.peakIndex)], peakFlags(test));
};

function peakFlags(test: PreparedTest): Flag[] {
  const { y, peakIndex } = test;
  const flags: Flag[] = [];
  let flat = 1;
  while (y[peakIndex + flat] === y[peakIndex]) flat++;
  if (flat >= FLAT_ROWS) flags.push({ code: 'load-flat-at-peak', found: flat, allowed: FLAT_ROWS - 1, unit: 'points' });
  const rowsAfter = y.length - 1 - peakIndex;
  const isFalling = y[y.length - 1]! < STILL_HIGH * y[peakIndex]!;
  if (rowsAfter === 0 || (rowsAfter < END_SHARE * y.length && !isFalling))
    flags.push({ code: 'peak-at-end', found: peakIndex + 1, allowed: y.length - 1, unit: 'points' });
  return [...flags, ...atLimit(test)];
}

/** The load still rises where the recipe stops looking: the figure is that at the limit, not a highest one. */
function atLimit({ recipe, x, y, peakIndex, toeShift, axes }: PreparedTest): Flag[] {
  const allowed = recipe.peakUpToStrain;
  const next = y[peakIndex + 1];
  if (allowed === undefined || next === undefined || !(next > y[peakIndex]!) || x[peakIndex + 1]! - toeShift <= allowed)
    return [];
  return [{ code: 'peak-at-limit', found: x[peakIndex]! - toeShift, allowed, unit: axes.xUnit }];
}
