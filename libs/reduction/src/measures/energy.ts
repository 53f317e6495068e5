import { areaUnder } from './crossings.js';
import { broadPeakFlags, peakFlags } from './peak-flags.js';
import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';

/** Work up to the peak, J: the area under load over travel, by trapezoids. */
export const energyToPeak: Measure = (test) => energyTo(test, test.peakIndex, 'peak');

/** Work up to the break, J. */
export const energyToBreak: Measure = (test) => energyTo(test, test.breakIndex, 'break');

/** Work per volume up to the break, MJ/m³: the area under stress over strain. */
export const workDensityToBreak: Measure = (test) => {
  const { stressLacks, strainLacks, axes, x, y, breakIndex, recipe } = test;
  if (stressLacks !== null) return lacking('dimension-missing', stressLacks);
  if (strainLacks !== null) return lacking('dimension-missing', strainLacks);
  const isAxial = (recipe.kind === 'tension' || recipe.kind === 'compression') && axes.xUnit === 'mm/mm';
  if (!isAxial) return lacking('does-not-apply', recipe.kind);
  return measured(areaUnder(x, y, 0, breakIndex), 'MJ/m³', [
    pointAt(test, 'from', 0),
    pointAt(test, 'break', breakIndex),
  ]);
};

const DEGREES_PER_RADIAN = 180 / Math.PI;
const MM_PER_M = 1000;

function energyTo(test: PreparedTest, row: number, role: 'peak' | 'break'): Measured[] {
  const { x, plainY, alongPerTravel, stressPerLoad, recipe } = test;
  if (alongPerTravel === null) return lacking('no-travel-column', 'displacementMm');
  if (stressPerLoad === null) return lacking('no-load-column', 'forceN');
  const perUnit = recipe.kind === 'torsion' ? DEGREES_PER_RADIAN : MM_PER_M;
  const energy = areaUnder(x, plainY, 0, row) / (alongPerTravel * stressPerLoad * perUnit);
  const flags = role === 'peak' ? [...peakFlags(test), ...broadPeakFlags(test)] : [];
  return measured(energy, 'J', [pointAt(test, 'from', 0), pointAt(test, role, row)], flags);
}
