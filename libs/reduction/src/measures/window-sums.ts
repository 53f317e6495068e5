/** Running sums of x, y, x² and xy about the middle of the curve, so that the slope of any window costs nothing. */
export class WindowSums {
  private readonly sums: Float64Array;

  /** @param to last row of the windows */
  constructor(x: Float64Array, y: Float64Array, to: number) {
    const sums = new Float64Array(4 * (to + 2));
    const [midX, midY] = [x[to]! / 2, y[to]! / 2];
    for (let at = 0; at <= to; at++) {
      const dx = x[at]! - midX;
      const dy = y[at]! - midY;
      const next = 4 * (at + 1);
      sums[next] = sums[next - 4]! + dx;
      sums[next + 1] = sums[next - 3]! + dy;
      sums[next + 2] = sums[next - 2]! + dx * dx;
      sums[next + 3] = sums[next - 1]! + dx * dy;
    }
    this.sums = sums;
  }

  /** Least-squares slope over rows [first, last]; 0 where x does not vary. */
  slope(first: number, last: number): number {
    const [low, high, n] = [4 * first, 4 * (last + 1), last - first + 1];
    const sx = this.sums[high]! - this.sums[low]!;
    const sy = this.sums[high + 1]! - this.sums[low + 1]!;
    const spread = this.sums[high + 2]! - this.sums[low + 2]! - (sx * sx) / n;
    const shared = this.sums[high + 3]! - this.sums[low + 3]! - (sx * sy) / n;
    return spread > 0 ? shared / spread : 0;
  }
}
