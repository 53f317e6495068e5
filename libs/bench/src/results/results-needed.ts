const PEAK = 'peak-load';
export const STRENGTH = 'peak-stress';

/** A result that has to come from the bench. */
export interface ResultNeeded {
  key: string;
  /** Whether somebody types it; otherwise it is computed. */
  typed: boolean;
}

/**
 * The results that have to come from the bench. A strength that follows from the peak and the lengths is computed, and the peak
 * is typed instead.
 *
 * @param wanted keys of the results that were asked for
 */
export function resultsNeeded(wanted: readonly string[], testType: string): ResultNeeded[] {
  const computed = wanted.includes(STRENGTH) && hasStress(testType);
  const keys = [...new Set([...(computed ? [PEAK] : []), ...wanted])];
  return keys.map((key) => ({ key, typed: !(computed && key === STRENGTH) }));
}

/** A test of a component has a peak and no stress. */
export function hasStress(testType: string): boolean {
  return testType !== 'component';
}
