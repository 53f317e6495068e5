import { peakFlags } from './peak-flags.js';
import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure } from './prepared-test.js';

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
