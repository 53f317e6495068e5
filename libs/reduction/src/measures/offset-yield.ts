import { placeFallingToLine } from './crossings.js';
import { lacking, measured } from './prepared-test.js';
import { ofOffsetYield } from './sensitivities.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';
import { crossheadFlags } from './slope-results.js';

/**
 * Stress where the curve meets a line parallel to the slope, moved along by the offset (ISO 6892-1 Rp, ASTM E8 7.7.1),
 * between rows by straight line. It is looked for above the straight part, up to the break.
 */
export const offsetYield: Measure = (test) => {
  const offsets = test.recipe.offsetStrains ?? [];
  if (offsets.length === 0) return lacking('recipe-missing', 'offsetStrains');
  return offsets.flatMap((offset) => atOffset(test, offset));
};

function atOffset(test: PreparedTest, offset: number): Measured[] {
  const { slope, slopeMissing, slopePoints, slopeFlags, stressLacks, x, y, axes, breakIndex } = test;
  if (stressLacks !== null) return lacking('dimension-missing', stressLacks, offset);
  if (!slope) return lacking('slope-missing', slopeMissing?.what ?? 'slope', offset);
  const place = placeFallingToLine(x, y, slope.slope, slope.footX + offset, slope.toIndex, breakIndex);
  if (!place) return lacking('not-reached', `offset ${offset}`, offset);
  const point = { role: 'crossing', index: place.index, x: place.x, y: place.y } as const;
  const sensitivity = ofOffsetYield(test, place, slope.slope, offset);
  const found = measured(
    place.y,
    axes.yUnit,
    [point, ...slopePoints],
    [...slopeFlags, ...crossheadFlags(test, 'strain-from-crosshead')],
    offset,
  );
  return found.map((each) => ({ ...each, sensitivity }));
}
