import { dimensionsNeeded, meansOf } from '#libs/bench/src/index.js';
import type { Readings } from '#libs/bench/src/index.js';
import type { JobView } from '#libs/contract/src/index.js';
import { GEOMETRY_LABELS } from '#libs/matching/src/index.js';
import type { Ask, Geometry, GeometryKey, Method } from '#libs/matching/src/index.js';

/** Readings of one dimension that are asked for; common practice, no source. More or fewer are kept as they come. */
const READINGS = 3;

interface Asked {
  method: Method;
  ask: Ask;
}

/** Keys of the lengths that are measured on each specimen of a job. */
export function dimensionKeys({ method, ask }: Asked): string[] {
  const methodLengths = method.geometry.map(({ key }) => key);
  return dimensionsNeeded({ testType: method.testType, methodLengths, shape: ask.geometry.shape });
}

/** The same as the bench shows them. */
export function dimensionsNeededOf({ method, ask }: Asked): JobView['dimensionsNeeded'] {
  return dimensionKeys({ method, ask }).map((key) => ({
    ...{ key, unit: 'mm', readings: READINGS },
    label: GEOMETRY_LABELS[key as GeometryKey],
    nominal: ask.geometry[key as GeometryKey] ?? null,
  }));
}

/** The geometry of one specimen: what was measured, as the mean of its readings, and what was asked for where nothing was. */
export function measuredGeometry({ geometry }: Ask, dimensions: Readings): Geometry {
  return { ...geometry, ...meansOf(dimensions) };
}
