import { meanOf, sdOf } from './describe-sample.js';
import { fUpperQuantile, studentQuantile } from './student.js';

/** Precision of a method from one material tested by several laboratories (or frames), n times each. */
export interface PrecisionStudy {
  readonly mean: number;
  /** Standard deviation of the cell means. */
  readonly sdOfMeans: number;
  readonly repeatabilitySd: number;
  /** At least the repeatability standard deviation, as ASTM E691 has it. */
  readonly reproducibilitySd: number;
  /** Before that rule. */
  readonly reproducibilitySdRaw: number;
  /** 95 % limits, 2.8 times the standard deviations. */
  readonly repeatabilityLimit: number;
  readonly reproducibilityLimit: number;
  /** Mandel's h (between) and k (within) of each cell. */
  readonly h: readonly number[];
  readonly k: readonly number[];
}

/** ASTM E691 takes 2.8 for 1.96·√2. */
const LIMIT_FACTOR = 2.8;

/**
 * ASTM E691 and ISO 5725-2 for a balanced study.
 *
 * @param cells one per laboratory, at least two, each with the same number n ≥ 2 of values
 * @throws {RangeError} otherwise
 */
export function studyPrecision(cells: readonly (readonly number[])[]): PrecisionStudy {
  const n = cells[0]?.length ?? 0;
  if (cells.length < 2 || n < 2 || cells.some((cell) => cell.length !== n)) {
    throw new RangeError('A precision study needs two cells or more with the same number of values, two or more.');
  }
  const means = cells.map(meanOf);
  const sds = cells.map((cell) => sdOf(cell)!);
  const mean = meanOf(means);
  const sdOfMeans = sdOf(means)!;
  const repeatabilitySd = Math.sqrt(meanOf(sds.map((sd) => sd * sd)));
  const raw = Math.sqrt(sdOfMeans ** 2 + (repeatabilitySd ** 2 * (n - 1)) / n);
  const reproducibilitySd = Math.max(raw, repeatabilitySd);
  return {
    mean,
    sdOfMeans,
    repeatabilitySd,
    reproducibilitySd,
    reproducibilitySdRaw: raw,
    repeatabilityLimit: LIMIT_FACTOR * repeatabilitySd,
    reproducibilityLimit: LIMIT_FACTOR * reproducibilitySd,
    h: means.map((each) => (each - mean) / sdOfMeans),
    k: sds.map((sd) => sd / repeatabilitySd),
  };
}

/** Critical |h| for p laboratories, (p−1)·t/√(p(t²+p−2)), t two-sided at alpha with p − 2 degrees of freedom (ASTM E691). */
export function mandelHCritical(laboratories: number, alpha = 0.005): number {
  const t = studentQuantile(1 - alpha / 2, laboratories - 2);
  return ((laboratories - 1) * t) / Math.sqrt(laboratories * (t * t + laboratories - 2));
}

/** Critical k for p laboratories and n values each, √(p/(1+(p−1)/F)), F at alpha with n−1 and (p−1)(n−1) (ASTM E691). */
export function mandelKCritical(laboratories: number, n: number, alpha = 0.005): number {
  const f = fUpperQuantile(alpha, n - 1, (laboratories - 1) * (n - 1));
  return Math.sqrt(laboratories / (1 + (laboratories - 1) / f));
}
