import { meanOf, sdOf } from './describe-sample.js';
import { studentQuantile } from './student.js';

/** Which end is suspected: `either` is the two-sided test, the others are decided before looking at the values. */
export type GrubbsSide = 'either' | 'lowest' | 'highest';

export interface GrubbsOutcome {
  /** Index of the value furthest from the mean on that side. */
  readonly suspectIndex: number;
  readonly g: number;
  readonly critical: number;
  /** True when g is above the critical value: a possible outlier, to be looked into and never just dropped. */
  readonly isPossibleOutlier: boolean;
}

/**
 * Critical value of Grubbs' test, (n−1)/√n · √(t²/(n−2+t²)), t at α/n one-sided or α/(2n) two-sided with n − 2 degrees
 * of freedom (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1).
 *
 * @param alpha level of significance, 0 < alpha < 1
 * @throws {RangeError} for n below 3
 */
export function grubbsCritical(n: number, alpha: number, side: GrubbsSide): number {
  if (!(n >= 3)) throw new RangeError(`Grubbs' test needs at least 3 values; there are ${n}.`);
  const tail = alpha / (side === 'either' ? 2 * n : n);
  const t2 = studentQuantile(tail, n - 2) ** 2;
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt(t2 / (n - 2 + t2));
}

/** Grubbs' test for one outlier; null when there are fewer than 3 values or they do not vary. */
export function testGrubbs(values: readonly number[], alpha = 0.05, side: GrubbsSide = 'either'): GrubbsOutcome | null {
  const sd = sdOf(values);
  if (values.length < 3 || !sd) return null;
  const mean = meanOf(values);
  const distance = (value: number) =>
    side === 'either' ? Math.abs(value - mean) : side === 'highest' ? value - mean : mean - value;
  const suspectIndex = values.reduce((best, value, at) => (distance(value) > distance(values[best]!) ? at : best), 0);
  const g = distance(values[suspectIndex]!) / sd;
  const critical = grubbsCritical(values.length, alpha, side);
  return { suspectIndex, g, critical, isPossibleOutlier: g > critical };
}
