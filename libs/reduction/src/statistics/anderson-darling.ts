import { meanOf, sdOf } from './describe-sample.js';
import { normalCdf } from './normal.js';

export interface NormalityTest {
  /** Anderson–Darling statistic A², mean and standard deviation taken from the sample. */
  readonly aSquared: number;
  /** Observed significance: the chance of so large a statistic if the population is normal. */
  readonly significance: number;
}

/** With fewer values the test says little. */
const FEWEST = 8;

/**
 * Anderson–Darling test of normality (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.14), with the observed significance
 * level that CMH-17 uses: A* = (1 + 4/n − 25/n²)·A², OSL = 1/(1 + exp(−0.48 + 0.78·ln A* + 4.58·A*)) (from memory, high; a spec
 * holds it to simulated normal samples).
 *
 * @returns null for fewer than 8 values, or when they do not vary
 */
export function testNormality(values: readonly number[]): NormalityTest | null {
  const n = values.length;
  const sd = sdOf(values);
  if (n < FEWEST || !sd) return null;
  const mean = meanOf(values);
  const below = [...values].sort((a, b) => a - b).map((value) => normalCdf((value - mean) / sd));
  const sum = below.reduce(
    (total, share, at) => total + (2 * at + 1) * (Math.log(share) + Math.log1p(-below[n - 1 - at]!)),
    0,
  );
  const aSquared = -n - sum / n;
  const adjusted = (1 + 4 / n - 25 / n ** 2) * aSquared;
  return { aSquared, significance: 1 / (1 + Math.exp(-0.48 + 0.78 * Math.log(adjusted) + 4.58 * adjusted)) };
}
