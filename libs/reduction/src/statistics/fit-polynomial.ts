/** Coefficients from the constant up, with their standard deviations and those of the residuals. */
export interface PolynomialFit {
  readonly coefficients: readonly number[];
  readonly coefficientSds: readonly number[];
  readonly residualSd: number;
  readonly rSquared: number;
}

/**
 * Least-squares polynomial by Householder's QR on x scaled to at most 1, which keeps the digits that normal equations lose;
 * for calibration curves of load cells (degree 2 or 3).
 *
 * @throws {RangeError} when there are not more points than coefficients
 */
export function fitPolynomial(x: readonly number[], y: readonly number[], degree: number): PolynomialFit {
  const size = degree + 1;
  if (!(x.length > size)) throw new RangeError(`A polynomial of degree ${degree} needs more than ${size} points.`);
  const scale = Math.max(...x.map(Math.abs)) || 1;
  const rows = x.map((value, at) => [...Array.from({ length: size }, (_, power) => (value / scale) ** power), y[at]!]);
  triangulate(rows, size);
  const scaled = solveUpper(rows, size);
  const rest = rows.slice(size).reduce((sum, row) => sum + row[size]! ** 2, 0);
  const residualSd = Math.sqrt(rest / (x.length - size));
  const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
  const total = y.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    coefficients: scaled.map((value, power) => value / scale ** power),
    coefficientSds: inverseRowNorms(rows, size).map((norm, power) => (residualSd * norm) / scale ** power),
    residualSd,
    rSquared: 1 - rest / total,
  };
}

/** Householder reflections on the first `size` columns of [X | y], in place. */
function triangulate(rows: number[][], size: number): void {
  for (let column = 0; column < size; column++) {
    const norm = Math.hypot(...rows.slice(column).map((row) => row[column]!));
    const head = rows[column]![column]!;
    const alpha = head > 0 ? -norm : norm;
    const v = rows.slice(column).map((row, at) => (at === 0 ? head - alpha : row[column]!));
    const vv = v.reduce((sum, value) => sum + value * value, 0);
    if (vv === 0) continue;
    for (let target = column; target <= size; target++) {
      const dot = v.reduce((sum, value, at) => sum + value * rows[column + at]![target]!, 0);
      v.forEach((value, at) => (rows[column + at]![target]! -= (2 * dot * value) / vv));
    }
  }
}

function solveUpper(rows: readonly number[][], size: number): number[] {
  const solution = new Array<number>(size).fill(0);
  for (let at = size - 1; at >= 0; at--) {
    const known = solution.reduce((sum, value, other) => (other > at ? sum + rows[at]![other]! * value : sum), 0);
    solution[at] = (rows[at]![size]! - known) / rows[at]![at]!;
  }
  return solution;
}

/** √ of the diagonal of (RᵀR)⁻¹: the norms of the rows of R⁻¹. */
function inverseRowNorms(rows: readonly number[][], size: number): number[] {
  const columns = Array.from({ length: size }, (_, unit) =>
    solveUpper(
      rows.slice(0, size).map((row, at) => [...row.slice(0, size), at === unit ? 1 : 0]),
      size,
    ),
  );
  return Array.from({ length: size }, (_, row) => Math.hypot(...columns.map((column) => column[row]!)));
}
