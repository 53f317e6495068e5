import { meansOf } from '#libs/bench/src/index.js';
import type { Readings } from '#libs/bench/src/index.js';
import type { MeasuredSize } from '#libs/contract/src/index.js';
import { GEOMETRY_LABELS } from '#libs/matching/src/index.js';
import type { GeometryKey } from '#libs/matching/src/index.js';
import { roundToStep } from '#libs/reduction/src/index.js';

/**
 * What was measured on one specimen, in the order in which the bench asks for it. A mean has as many decimals as the finest of its
 * readings, since more would be of the dividing (common practice, no source).
 */
export function measuredSizes(keys: readonly string[], readings: Readings): MeasuredSize[] {
  const means = meansOf(readings);
  return keys.flatMap((key) => {
    const [mean, of] = [means[key], readings[key]];
    if (mean === undefined || of === undefined) return [];
    const decimals = Math.max(...of.map(decimalsOf));
    const label = GEOMETRY_LABELS[key as GeometryKey];
    return [{ key, label, unit: 'mm', readings: [...of], mean: roundToStep(mean, 10 ** -decimals) }];
  });
}

function decimalsOf(reading: number): number {
  return String(reading).split('.')[1]?.length ?? 0;
}
