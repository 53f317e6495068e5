import { drawCurve, rowsToDraw } from './draw-curve.js';

describe('drawing a curve', () => {
  it('draws it in the axes of its results', () => {
    const curve = {
      pointCount: 3,
      forceN: Float64Array.from([0, -200, -100]),
      displacementMm: Float64Array.from([7, 6, 5]),
    };
    const recipe = {
      kind: 'compression',
      section: 'given-area',
      results: [],
      toe: { way: 'none' },
      break: { way: 'end-of-curve' },
    } as const;
    expect(drawCurve(curve, recipe, { areaMm2: 50, heightMm: 20 }, 100)).toEqual({
      axes: { xName: 'strain', xUnit: 'mm/mm', yName: 'stress', yUnit: 'MPa' },
      x: [0, 0.05, 0.1],
      y: [0, 4, 2],
    });
    expect(drawCurve({ pointCount: 1 }, recipe, {}, 100)).toMatchObject({ reason: 'too-few-points' });
  });

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
