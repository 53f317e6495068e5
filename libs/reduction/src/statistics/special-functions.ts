/** Coefficients of Lanczos's series for g = 7, n = 9 (Godfrey's set, widely published). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** Natural logarithm of Γ(x) for x > 0, to about 14 digits. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const shifted = x - 1;
  const t = shifted + 7.5;
  const sum = LANCZOS.slice(1).reduce<number>(
    (series, coefficient, at) => series + coefficient / (shifted + at + 1),
    LANCZOS[0],
  );
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

const MOST_TERMS = 500;
const HAIR = 1e-16;
const TINY = 1e-300;

/** Regularised incomplete beta function I_x(a, b), by Lentz's continued fraction (DLMF 8.17.22). */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return (front * betaFraction(x, a, b)) / a;
}

function betaFraction(x: number, a: number, b: number): number {
  let [c, d] = [1, 1 / awayFromZero(1 - ((a + b) * x) / (a + 1))];
  let fraction = d;
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    for (const term of [even, odd]) {
      d = 1 / awayFromZero(1 + term * d);
      c = awayFromZero(1 + term / c);
      fraction *= c * d;
    }
    if (Math.abs(c * d - 1) < HAIR * 10) break;
  }
  return fraction;
}

function awayFromZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
