import type { SampleFigures } from './statistics-types.js';
import { studentQuantile } from './student.js';

/** Mean in two passes: the rest that the first sum lost to rounding is added. */
export function meanOf(values: ArrayLike<number>): number {
  const n = values.length;
  let sum = 0;
  for (let at = 0; at < n; at++) sum += values[at]!;
  const rough = sum / n;
  let rest = 0;
  for (let at = 0; at < n; at++) rest += values[at]! - rough;
  return rough + rest / n;
}

/** Standard deviation with n − 1, about the mean in two passes with Neely's correction of the mean's rounding; null for n < 2. */
export function sdOf(values: ArrayLike<number>): number | null {
  const n = values.length;
  if (n < 2) return null;
  const mean = meanOf(values);
  let [squares, rest] = [0, 0];
  for (let at = 0; at < n; at++) {
    const off = values[at]! - mean;
    squares += off * off;
    rest += off;
  }
  return Math.sqrt(Math.max(0, squares - (rest * rest) / n) / (n - 1));
}

/** Middle value, or the mean of the two middle ones. */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/**
 * n, mean, standard deviation, CV, median, least, most and the confidence interval of the mean
 * (mean ± t·s/√n, ISO 2602), in the unit of the values.
 *
 * @param values at least one, all finite; none is ever left out
 * @param confidence two-sided, 0 < confidence < 1
 * @throws {RangeError} for no values or one that is not finite
 */
export function describeSample(values: readonly number[], confidence = 0.95): SampleFigures {
  if (values.length === 0) throw new RangeError('A sample needs at least one value.');
  if (!values.every(Number.isFinite)) throw new RangeError('A sample needs finite values.');
  const mean = meanOf(values);
  const sd = sdOf(values);
  const sorted = [...values].sort((a, b) => a - b);
  return {
    n: values.length,
    mean,
    sd,
    cvPct: sd === null || mean === 0 ? null : (100 * sd) / Math.abs(mean),
    median: medianOf(values),
    min: sorted[0]!,
    max: sorted.at(-1)!,
    meanInterval: sd === null ? null : intervalOf(mean, sd, values.length, confidence),
  };
}

function intervalOf(mean: number, sd: number, n: number, confidence: number) {
  const half = (studentQuantile((1 + confidence) / 2, n - 1) * sd) / Math.sqrt(n);
  return { from: mean - half, to: mean + half, confidence };
}

/** Correlation of each value with the one before it, as NIST StRD defines it: a drift shows as a value near 1. */
export function lagOneCorrelation(values: readonly number[]): number {
  const mean = meanOf(values);
  let [products, squares] = [0, 0];
  values.forEach((value, at) => {
    squares += (value - mean) ** 2;
    if (at > 0) products += (value - mean) * (values[at - 1]! - mean);
  });
  return products / squares;
}
