import { normalCdf } from './normal.js';
import { solveRising } from './solve-rising.js';
import { logGamma } from './special-functions.js';

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

/** Standard deviations of s/σ, and of Φ, beyond which nothing counts. */
const REACH = 12;
const REACH_OF_PHI = 9;
const PANELS = 8;

/**
 * Distribution function of the noncentral t: P(T ≤ t) = ∫ Φ(t·u − δ) f(u) du, where u = s/σ and ν·u² is chi-squared
 * with ν degrees of freedom. Integrated directly, since the usual series fail for the large δ of big samples; cut where
 * Φ rises, since it may do so steeply.
 *
 * @param noncentrality δ
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number {
  const spread = 1 / Math.sqrt(2 * degreesOfFreedom);
  const density = densityOfS(degreesOfFreedom);
  const integrand = (u: number) => normalCdf(t * u - noncentrality) * density(u);
  const [low, high] = [Math.max(0, 1 - REACH * spread), 1 + REACH * spread];
  const rise =
    t === 0 ? [] : [(noncentrality - REACH_OF_PHI) / t, noncentrality / t, (noncentrality + REACH_OF_PHI) / t];
  const cuts = [low, ...rise.filter((cut) => cut > low && cut < high).sort((a, b) => a - b), high];
  const sum = cuts.slice(1).reduce((total, to, at) => total + integrate(integrand, cuts[at]!, to), 0);
  return Math.min(1, sum);
}

function integrate(f: (u: number) => number, from: number, to: number): number {
  const half = (to - from) / (2 * PANELS);
  let sum = 0;
  for (let panel = 0; panel < PANELS; panel++) {
    const middle = from + (2 * panel + 1) * half;
    for (const [node, weight] of NODES) sum += weight * half * (f(middle - node * half) + f(middle + node * half));
  }
  return sum;
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
