const SEGMENT_ROWS = 65_536;

/**
 * Columns that grow row by row without ever being copied until the end, so that reading a long curve
 * needs hardly more memory than the curve itself.
 */
export class GrowingColumns {
  private readonly full: Float64Array[][];
  private open: Float64Array[];
  private filled = 0;
  rowCount = 0;

  constructor(columnCount: number) {
    this.full = Array.from({ length: columnCount }, () => []);
    this.open = this.full.map(() => new Float64Array(SEGMENT_ROWS));
  }

  /** @param row one value per column; it is copied */
  add(row: Float64Array): void {
    if (this.filled === SEGMENT_ROWS) this.turnOver();
    const at = this.filled++;
    for (let column = 0; column < this.open.length; column++) this.open[column]![at] = row[column]!;
    this.rowCount++;
  }

  private turnOver(): void {
    this.full.forEach((segments, column) => segments.push(this.open[column]!));
    this.open = this.full.map(() => new Float64Array(SEGMENT_ROWS));
    this.filled = 0;
  }

  /** Joins each column in turn and lets go of its segments; the columns are empty afterwards. */
  finish(): Float64Array[] {
    const joined = this.full.map((segments, column) => {
      const values = new Float64Array(this.rowCount);
      segments.forEach((segment, at) => values.set(segment, at * SEGMENT_ROWS));
      values.set(this.open[column]!.subarray(0, this.filled), segments.length * SEGMENT_ROWS);
      segments.length = 0;
      return values;
    });
    this.open = [];
    return joined;
  }
}
