import { solveRising } from './solve-rising.js';
import { incompleteBeta } from './special-functions.js';

/** Student's t distribution function (DLMF 8.17: through the incomplete beta function). @param degreesOfFreedom > 0, need not be whole */
export function studentCdf(t: number, degreesOfFreedom: number): number {
  const tail = incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5) / 2;
  return t > 0 ? 1 - tail : tail;
}

/**
 * Quantile of Student's t.
 *
 * @param p probability, 0 < p < 1
 * @throws {RangeError} outside, or without degrees of freedom
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`Probability ${p} is not between 0 and 1.`);
  if (!(degreesOfFreedom > 0)) throw new RangeError(`${degreesOfFreedom} degrees of freedom are not enough.`);
  if (p === 0.5) return 0;
  return p > 0.5 ? -lowerQuantile(1 - p, degreesOfFreedom) : lowerQuantile(p, degreesOfFreedom);
}

/** Solved in the lower tail, where small probabilities keep their digits. */
function lowerQuantile(p: number, degreesOfFreedom: number): number {
  return solveRising((t) => studentCdf(t, degreesOfFreedom), p, -2, 0);
}
