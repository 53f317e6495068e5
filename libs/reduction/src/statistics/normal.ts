import { solveRising } from './solve-rising.js';

const SERIES_UP_TO = 3;
/** Enough for 16 digits where the tail begins; fewer are needed further out. */
const TAIL_TERMS = 100;

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * Standard normal distribution function, to about 15 digits: the series of Marsaglia (2004, "Evaluating the Normal
 * Distribution", J. Stat. Softw. 11(4)) near zero, the continued fraction of the tail (DLMF 7.9.1) beyond.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return Number.NaN;
  if (Math.abs(z) <= SERIES_UP_TO) return 0.5 + normalDensity(z) * series(z);
  return z > 0 ? 1 - upperTail(z) : upperTail(-z);
}

function series(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 3; Math.abs(term) > 1e-18 * Math.abs(sum); n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return sum;
}

function upperTail(z: number): number {
  let fraction = 0;
  for (let n = TAIL_TERMS; n >= 1; n--) fraction = n / (z + fraction);
  return normalDensity(z) / (z + fraction);
}

/**
 * Quantile of the standard normal distribution.
 *
 * @param p probability, 0 < p < 1
 * @throws {RangeError} outside
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`Probability ${p} is not between 0 and 1.`);
  return p > 0.5 ? -lowerQuantile(1 - p) : lowerQuantile(p);
}

function lowerQuantile(p: number): number {
  return p === 0.5 ? 0 : solveRising(normalCdf, p, -40, 0);
}
