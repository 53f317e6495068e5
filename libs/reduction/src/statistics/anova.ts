import { meanOf } from './describe-sample.js';
import { fUpperTail } from './student.js';

/** One-way analysis of variance; mean squares in the squared unit of the values. */
export interface Anova {
  readonly betweenDegreesOfFreedom: number;
  readonly withinDegreesOfFreedom: number;
  readonly betweenMeanSquare: number;
  readonly withinMeanSquare: number;
  readonly f: number;
  /** Chance of such an F or a larger one if the groups do not differ. */
  readonly pValue: number;
  readonly rSquared: number;
  readonly residualSd: number;
}

/**
 * Do batches differ? Computed about the grand mean, so that data with many leading digits in common keep theirs.
 *
 * @param groups at least two, none empty, with more values than groups
 * @throws {RangeError} otherwise
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): Anova {
  const all = groups.flat();
  const [between, within] = [groups.length - 1, all.length - groups.length];
  if (between < 1 || within < 1 || groups.some((group) => group.length === 0)) {
    throw new RangeError('Analysis of variance needs two groups or more, and more values than groups.');
  }
  const grand = meanOf(all);
  const centred = groups.map((group) => group.map((value) => value - grand));
  const means = centred.map(meanOf);
  const betweenSquares = means.reduce((sum, mean, at) => sum + centred[at]!.length * mean * mean, 0);
  const withinSquares = centred
    .flatMap((group, at) => group.map((value) => (value - means[at]!) ** 2))
    .reduce((a, b) => a + b, 0);
  const f = betweenSquares / between / (withinSquares / within);
  return {
    betweenDegreesOfFreedom: between,
    withinDegreesOfFreedom: within,
    betweenMeanSquare: betweenSquares / between,
    withinMeanSquare: withinSquares / within,
    f,
    pValue: fUpperTail(f, between, within),
    rSquared: betweenSquares / (betweenSquares + withinSquares),
    residualSd: Math.sqrt(withinSquares / within),
  };
}
