import { hasStress } from './results-needed.js';

/** The load that one unit of stress means on a specimen, and the road to it; from the formula of its test. */
export interface LoadPerStress {
  value: number;
  formula: string;
  inputs: readonly { name: string; value: number; unit: string }[];
}

/** A strength with what it rests on. */
export interface Strength {
  value: number;
  basis: { formula: string; peak: number; inputs: LoadPerStress['inputs'] };
}

/**
 * The strength that follows from the peak and the measured lengths.
 *
 * @param peak N, for torsion N·m
 * @returns in the unit of the test's stress; null where lengths are missing or the test has no stress
 */
export function strengthFrom(
  peak: number,
  { testType, isMeasured, perStress }: { testType: string; isMeasured: boolean; perStress: LoadPerStress },
): Strength | null {
  if (!hasStress(testType) || !isMeasured) return null;
  const value = peak / perStress.value;
  if (!Number.isFinite(value)) return null;
  return { value, basis: { formula: perStress.formula, peak, inputs: perStress.inputs } };
}
