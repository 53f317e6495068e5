/** A specimen by its test and its section, as far as its lengths matter. */
export interface Measured {
  testType: string;
  /** Lengths that the method names. */
  methodLengths: readonly string[];
  shape: string;
}

const OF_SHAPE: Readonly<Record<string, readonly string[]>> = {
  rectangle: ['widthMm', 'thicknessMm'],
  strip: ['widthMm', 'thicknessMm'],
  round: ['diameterMm'],
  tube: ['outerDiameterMm', 'innerDiameterMm'],
  thread: [],
  component: [],
};

/** Where the load formula asks for something else than the section of the shape. */
const OF_TEST: Readonly<Record<string, readonly string[]>> = {
  peel: ['widthMm'],
  strip: ['widthMm'],
  tear: ['thicknessMm'],
  'lap-shear': ['widthMm', 'overlapMm'],
  fracture: ['widthMm', 'thicknessMm', 'crackLengthMm'],
  component: [],
};

/** Keys of the lengths that are measured on each specimen because a result is computed from them. */
export function dimensionsNeeded({ testType, methodLengths, shape }: Measured): string[] {
  const height = testType === 'compression' && methodLengths.includes('heightMm') ? ['heightMm'] : [];
  return [...(OF_TEST[testType] ?? OF_SHAPE[shape] ?? []), ...height];
}

/** Readings of each length, mm, by its key. */
export type Readings = Readonly<Record<string, readonly number[]>>;

/** Whether every length that enters a result was measured on this specimen. */
export function isMeasured(needed: readonly string[], dimensions: Readings): boolean {
  return needed.every((key) => (dimensions[key]?.length ?? 0) > 0);
}

/** Each length that was measured, as the mean of its readings, mm. */
export function meansOf(dimensions: Readings): Record<string, number> {
  const means = Object.entries(dimensions).flatMap(([key, readings]) =>
    readings.length > 0 ? [[key, readings.reduce((sum, value) => sum + value, 0) / readings.length] as const] : [],
  );
  return Object.fromEntries(means);
}
