/** A straight line with the figures of its fit; `rSquared` is 1 where y does not vary. */
export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  readonly rSquared: number;
  readonly residualSd: number;
  readonly slopeSd: number;
  readonly interceptSd: number;
  readonly n: number;
}

/**
 * Least-squares line through points [from, to) of two columns, computed about the means in two passes, so that
 * it keeps its digits for data far from zero.
 *
 * @throws {RangeError} with fewer than two points, or when x does not vary
 */
export function fitLine(x: ArrayLike<number>, y: ArrayLike<number>, from = 0, to = x.length): LineFit {
  const n = to - from;
  if (n < 2) throw new RangeError('A line needs at least two points.');
  const meanX = meanOf(x, from, to);
  const meanY = meanOf(y, from, to);
  const { xx, xy, yy } = productsAbout(x, y, meanX, meanY, from, to);
  if (xx === 0) throw new RangeError('A line needs points that differ in x.');
  const slope = xy / xx;
  const intercept = meanY - slope * meanX;
  const residual = squaredResiduals(x, y, slope, meanX, meanY, from, to);
  const residualSd = n > 2 ? Math.sqrt(residual / (n - 2)) : 0;
  return {
    slope,
    intercept,
    rSquared: yy === 0 ? 1 : 1 - residual / yy,
    residualSd,
    slopeSd: residualSd / Math.sqrt(xx),
    interceptSd: residualSd * Math.sqrt(1 / n + (meanX * meanX) / xx),
    n,
  };
}

function meanOf(values: ArrayLike<number>, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += values[at]!;
  const rough = sum / (to - from);
  let rest = 0;
  for (let at = from; at < to; at++) rest += values[at]! - rough;
  return rough + rest / (to - from);
}

function productsAbout(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  meanX: number,
  meanY: number,
  from: number,
  to: number,
) {
  let [xx, xy, yy] = [0, 0, 0];
  for (let at = from; at < to; at++) {
    const dx = x[at]! - meanX;
    const dy = y[at]! - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  return { xx, xy, yy };
}

function squaredResiduals(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  slope: number,
  meanX: number,
  meanY: number,
  from: number,
  to: number,
): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += (y[at]! - meanY - slope * (x[at]! - meanX)) ** 2;
  return sum;
}
