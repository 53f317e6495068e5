import { GrowingColumns } from './growing-columns.js';

/** Segments of 65 536, 131 072 and 262 144 rows, the last one open. */
const ENDS = [65_536, 65_536 + 131_072];

describe('columns that grow', () => {
  it.each([1, ...ENDS.flatMap((end) => [end - 1, end, end + 1])])('hold every one of %i rows in its place', (count) => {
    const columns = new GrowingColumns(2);
    for (let row = 0; row < count; row++) columns.add(Float64Array.of(row, -2 * row));
    const [first, second] = columns.finish();
    expect([columns.rowCount, first!.length, second!.length]).toEqual([count, count, count]);
    expect(first!.every((value, row) => value === row)).toBe(true);
    expect(second!.every((value, row) => value === -2 * row)).toBe(true);
  });
});
