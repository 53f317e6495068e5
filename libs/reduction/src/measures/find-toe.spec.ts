import type { Loading } from './find-slope.js';
import { findSlopeAndToe, steepestLine } from './find-toe.js';

// y = 200·(x − 0.01) from x = 0.01 on, nothing before; rows every 0.001 up to 0.05, so that the peak is 8.
const x = Float64Array.from({ length: 51 }, (_, row) => row / 1000);
const y = x.map((each) => Math.max(0, 200 * (each - 0.01)));
const loading: Loading = { x, y, peakIndex: 50 };
const strain = (way: 'chord' | 'regression', from: number, to: number) =>
  ({ way, bounds: { over: 'strain', from, to } }) as const;
const share = (from: number, to: number) => ({ way: 'regression', bounds: { over: 'peak-share', from, to } }) as const;

describe('findSlopeAndToe', () => {
  it('leaves the strain alone when told so', () => {
    expect(findSlopeAndToe(loading, share(0.2, 0.8), { way: 'none' }).toeShift).toBe(0);
  });

  it('counts strain bounds from the corrected zero', () => {
    const { slope, toeShift } = findSlopeAndToe(loading, strain('regression', 0.01, 0.02), { way: 'slope-line' });
    expect(toeShift).toBeCloseTo(0.01, 10);
    expect(slope).toMatchObject({ line: { fromIndex: 20, toIndex: 30 } });
  });

  it('takes no toe out of a curve that bends over from its start', () => {
    const bending = { x, y: x.map((each) => 100 * Math.sqrt(each)), peakIndex: 50 };
    const { slope, toeShift } = findSlopeAndToe(bending, strain('chord', 0.001, 0.02), {
      way: 'steepest',
      spanShare: 0.2,
    });
    expect(toeShift).toBe(0);
    // Chord between 0.001 and 0.02: 100 · (√0.02 − √0.001) / 0.019.
    expect(slope).toMatchObject({ line: { fromIndex: 1, toIndex: 20 } });
  });

  it('finds the foot by the steepest line', () => {
    expect(
      findSlopeAndToe(loading, strain('chord', 0.001, 0.02), { way: 'steepest', spanShare: 0.2 }).toeShift,
    ).toBeCloseTo(0.01, 10);
  });
});

it('the steepest line lies where the curve is steepest, far from zero as well', () => {
  const bent = y.map((each, row) => 1e6 + (row < 30 ? each : each * 2));
  const line = steepestLine({ x, y: bent, peakIndex: 50 }, 0.04)!;
  expect(line.fromIndex).toBeGreaterThanOrEqual(28);
  expect(line.toIndex).toBeLessThanOrEqual(31);
});
