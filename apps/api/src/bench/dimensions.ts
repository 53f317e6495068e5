import type { JobView } from '#libs/contract/src/index.js';
import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { GEOMETRY_LABELS } from '#libs/matching/src/index.js';
import type { Ask, Geometry, GeometryKey, Method, Shape, TestType } from '#libs/matching/src/index.js';

/** Readings of one dimension that are asked for; common practice, no source. More or fewer are kept as they come. */
const READINGS = 3;

const OF_SHAPE: Record<Shape, readonly GeometryKey[]> = {
  rectangle: ['widthMm', 'thicknessMm'],
  strip: ['widthMm', 'thicknessMm'],
  round: ['diameterMm'],
  tube: ['outerDiameterMm', 'innerDiameterMm'],
  thread: [],
  component: [],
};

/** Where the load formula asks for something else than the section of the shape. */
const OF_TEST: Partial<Record<TestType, readonly GeometryKey[]>> = {
  peel: ['widthMm'],
  strip: ['widthMm'],
  tear: ['thicknessMm'],
  'lap-shear': ['widthMm', 'overlapMm'],
  fracture: ['widthMm', 'thicknessMm', 'crackLengthMm'],
  component: [],
};

/** The lengths that are measured on each specimen because a result is computed from them. */
export function dimensionsNeeded(method: Method, ask: Ask): JobView['dimensionsNeeded'] {
  const { shape } = ask.geometry;
  const height: readonly GeometryKey[] =
    method.testType === 'compression' && method.geometry.some(({ key }) => key === 'heightMm') ? ['heightMm'] : [];
  const keys = [...(OF_TEST[method.testType] ?? OF_SHAPE[shape]), ...height];
  return keys.map((key) => ({
    key,
    label: GEOMETRY_LABELS[key],
    unit: 'mm',
    readings: READINGS,
    nominal: ask.geometry[key] ?? null,
  }));
}

/** The geometry of one specimen: what was measured, as the mean of its readings, and what was asked for where nothing was. */
export function measuredGeometry(ask: Ask, dimensions: Readonly<Record<string, readonly number[]>>): Geometry {
  const means = Object.entries(dimensions).flatMap(([key, readings]) =>
    readings.length > 0 ? [[key, meanOf(readings)]] : [],
  );
  return { ...ask.geometry, ...(Object.fromEntries(means) as Partial<Geometry>) };
}

/** Whether every length that enters the result was measured on this specimen. */
export function isMeasured(
  needed: JobView['dimensionsNeeded'],
  dimensions: Readonly<Record<string, readonly number[]>>,
): boolean {
  return needed.every(({ key }) => (dimensions[key]?.length ?? 0) > 0);
}

/** Bounds of a length at the bench, mm. */
const LENGTH = { unit: 'mm', above: 0, max: 10_000 } as const;
const MOST_READINGS = 20;

/** What is wrong with lengths that somebody sent, by field. */
export function dimensionProblems(
  { method, ask }: { method: Method; ask: Ask },
  dimensions: Record<string, number[]>,
): (FieldProblem | null)[] {
  const needed: string[] = dimensionsNeeded(method, ask).map(({ key }) => key);
  const allowed = needed.length > 0 ? `one of ${needed.join(', ')}` : 'none: nothing is measured on these';
  return Object.entries(dimensions).flatMap(([key, readings]) => {
    const field = `dimensions.${key}`;
    if (!needed.includes(key)) return [fieldProblem({ field, found: key, allowed, unit: '' })];
    if (!Array.isArray(readings) || readings.length === 0 || readings.length > MOST_READINGS) {
      return [fieldProblem({ field, found: readings, allowed: `1 to ${MOST_READINGS} readings`, unit: '' })];
    }
    return readings.map((value, index) => numberProblem(`${field}[${index}]`, value, LENGTH));
  });
}

function meanOf(readings: readonly number[]): number {
  return readings.reduce((sum, value) => sum + value, 0) / readings.length;
}
