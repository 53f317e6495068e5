import { rowsToDraw } from './rows-to-draw.js';

describe('rows to draw', () => {
  it('keeps ends, peaks and valleys of a long curve in so few points', () => {
    const y = Float64Array.from({ length: 100_000 }, (_, row) => Math.sin(row / 9000));
    y[54_321] = 40;
    y[54_322] = -40;
    const rows = rowsToDraw(y, 1000);
    expect(rows.length).toBeLessThanOrEqual(1000);
    expect([rows[0], rows.at(-1)]).toEqual([0, 99_999]);
    expect(rows).toEqual(expect.arrayContaining([54_321, 54_322]));
    expect(rows).toEqual([...rows].sort((a, b) => a - b));
  });

  it('leaves a short curve as it is', () => {
    expect(rowsToDraw(Float64Array.from([3, 1, 2]), 3)).toEqual([0, 1, 2]);
  });
});
