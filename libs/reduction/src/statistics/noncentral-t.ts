import { normalCdf } from './normal.js';
import { logGamma, solveRising } from './special-functions.js';

/** Nodes and weights of Gauss–Legendre quadrature of order 16 on [−1, 1] (Abramowitz and Stegun, table 25.4), positive half. */
const NODES = [
  [0.0950125098376374, 0.1894506104550685],
  [0.2816035507792589, 0.1826034150449236],
  [0.4580167776572274, 0.1691565193950025],
  [0.6178762444026438, 0.1495959888165767],
  [0.755404408355003, 0.1246289712555339],
  [0.8656312023878318, 0.0951585116824928],
  [0.9445750230732326, 0.0622535239386479],
  [0.9894009349916499, 0.0271524594117541],
] as const;

/** Widths of the distribution of s/σ beyond which nothing counts. */
const REACH = 12;
const PANELS = 24;

/**
 * Distribution function of the noncentral t: P(T ≤ t) = ∫ Φ(t·u − δ) f(u) du, where u = s/σ and ν·u² is chi-squared
 * with ν degrees of freedom. Integrated directly, since the usual series fail for the large δ of big samples.
 *
 * @param noncentrality δ
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number {
  const spread = 1 / Math.sqrt(2 * degreesOfFreedom);
  const low = Math.max(0, 1 - REACH * spread);
  const high = 1 + REACH * spread;
  const width = (high - low) / PANELS;
  const density = densityOfS(degreesOfFreedom);
  let sum = 0;
  for (let panel = 0; panel < PANELS; panel++) {
    const middle = low + (panel + 0.5) * width;
    for (const [node, weight] of NODES) {
      for (const u of [middle - (node * width) / 2, middle + (node * width) / 2]) {
        sum += ((weight * width) / 2) * normalCdf(t * u - noncentrality) * density(u);
      }
    }
  }
  return Math.min(1, sum);
}

/** Density of s/σ (chi over √ν). */
function densityOfS(nu: number): (u: number) => number {
  const constant = Math.LN2 + (nu / 2) * Math.log(nu / 2) - logGamma(nu / 2);
  return (u) => (u <= 0 ? 0 : Math.exp(constant + (nu - 1) * Math.log(u) - (nu * u * u) / 2));
}

/** Quantile of the noncentral t. @param p probability, 0 < p < 1 */
export function noncentralTQuantile(p: number, degreesOfFreedom: number, noncentrality: number): number {
  return solveRising(
    (t) => noncentralTCdf(t, degreesOfFreedom, noncentrality),
    p,
    noncentrality - 4,
    noncentrality + 4,
  );
}
