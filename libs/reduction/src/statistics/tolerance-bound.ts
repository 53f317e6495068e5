import { describeSample } from './describe-sample.js';
import { noncentralTQuantile } from './noncentral-t.js';
import { normalQuantile } from './normal.js';

/**
 * Factor k of a one-sided tolerance bound of a normal population with unknown mean and standard deviation:
 * k = t'(confidence; n − 1, √n·z)/√n (ISO 16269-6; Krishnamoorthy and Mathew 2009, 2.2.3).
 * Coverage 0.90 at 0.95 gives the B-basis factor of CMH-17, 0.99 at 0.95 the A-basis factor.
 *
 * @throws {RangeError} for n below 2
 */
export function toleranceFactor(n: number, coverage: number, confidence: number): number {
  if (!(n >= 2)) throw new RangeError(`A tolerance factor needs at least 2 values; there are ${n}.`);
  return noncentralTQuantile(confidence, n - 1, Math.sqrt(n) * normalQuantile(coverage)) / Math.sqrt(n);
}

export interface ToleranceBound {
  readonly bound: number;
  readonly k: number;
  readonly coverage: number;
  readonly confidence: number;
  readonly side: 'lower' | 'upper';
}

/**
 * The value that at least `coverage` of the population lies above (or below), with `confidence`, if it is normal:
 * mean ∓ k·s. It does not check whether the population is normal, nor pool batches. Null for fewer than 2 values.
 */
export function toleranceBound(
  values: readonly number[],
  coverage: number,
  confidence: number,
  side: 'lower' | 'upper' = 'lower',
): ToleranceBound | null {
  const { n, mean, sd } = describeSample(values);
  if (sd === null) return null;
  const k = toleranceFactor(n, coverage, confidence);
  return { bound: side === 'lower' ? mean - k * sd : mean + k * sd, k, coverage, confidence, side };
}
