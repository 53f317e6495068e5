const FIRST_ROWS = 65_536;
/** 64 MiB a column. Blocks this large go back to the machine as soon as they are let go of; small ones stay with the process. */
const LARGEST_ROWS = 8_388_608;

/**
 * Columns that grow row by row without ever being copied until the end, so that reading a long curve
 * needs hardly more memory than the curve itself.
 */
export class GrowingColumns {
  private readonly full: Float64Array[][];
  private open: Float64Array[];
  private room = FIRST_ROWS;
  private filled = 0;
  rowCount = 0;

  constructor(columnCount: number) {
    this.full = Array.from({ length: columnCount }, () => []);
    this.open = this.full.map(() => new Float64Array(FIRST_ROWS));
  }

  /** @param row one value per column; it is copied */
  add(row: Float64Array): void {
    if (this.filled === this.room) this.turnOver();
    const at = this.filled++;
    for (let column = 0; column < this.open.length; column++) this.open[column]![at] = row[column]!;
    this.rowCount++;
  }

  /** Each segment is twice as long as the one before: what is not yet written of it takes no memory. */
  private turnOver(): void {
    this.room = Math.min(2 * this.room, LARGEST_ROWS);
    this.full.forEach((segments, column) => segments.push(this.open[column]!));
    this.open = this.full.map(() => new Float64Array(this.room));
    this.filled = 0;
  }

  /** Joins each column in turn and lets go of its segments; the columns are empty afterwards. */
  finish(): Float64Array[] {
    const { open, filled } = this;
    this.open = [];
    return this.full.map((segments, column) => {
      const values = new Float64Array(this.rowCount);
      let at = 0;
      for (const segment of segments) {
        values.set(segment, at);
        at += segment.length;
      }
      values.set(open[column]!.subarray(0, filled), at);
      segments.length = 0;
      open[column] = EMPTY;
      return values;
    });
  }
}

const EMPTY = new Float64Array(0);
