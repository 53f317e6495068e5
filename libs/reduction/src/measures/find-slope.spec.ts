import { findSlope } from './find-slope.js';
import type { Loading } from './find-slope.js';

// y = 200·(x − 0.01) from x = 0.01 on, nothing before; rows every 0.001 up to 0.05, so that the peak is 8.
const x = Float64Array.from({ length: 51 }, (_, row) => row / 1000);
const y = x.map((each) => Math.max(0, 200 * (each - 0.01)));
const loading: Loading = { x, y, peakIndex: 50 };
const strain = (way: 'chord' | 'regression', from: number, to: number) =>
  ({ way, bounds: { over: 'strain', from, to } }) as const;
const share = (from: number, to: number) => ({ way: 'regression', bounds: { over: 'peak-share', from, to } }) as const;

describe('findSlope', () => {
  it('joins the two bounds, found between rows, by a chord', () => {
    const slope = findSlope(loading, strain('chord', 0.0205, 0.0305), 0);
    expect(slope).toMatchObject({
      state: 'found',
      points: [
        { index: 20, y: expect.closeTo(2.1, 10) },
        { index: 30, y: expect.closeTo(4.1, 10) },
      ],
    });
    expect(slope.state === 'found' && slope.line.slope).toBeCloseTo(200, 10);
    expect(slope.state === 'found' && slope.line.footX).toBeCloseTo(0.01, 12);
  });

  it('takes every row between the bounds, both met exactly, into a regression', () => {
    const slope = findSlope(loading, strain('regression', 0.02, 0.03), 0);
    expect(slope).toMatchObject({ state: 'found', line: { fromIndex: 20, toIndex: 30 }, flags: [] });
  });

  it('flags a regression on fewer than five points', () => {
    expect(findSlope(loading, strain('regression', 0.02, 0.024), 0)).toMatchObject({
      line: { fromIndex: 20, toIndex: 24 },
      flags: [],
    });
    expect(findSlope(loading, strain('regression', 0.02, 0.023), 0)).toMatchObject({
      flags: [{ code: 'slope-window-short', found: 4, allowed: 5 }],
    });
  });

  it('flags a part that is not straight', () => {
    expect(findSlope(loading, strain('regression', 0, 0.03), 0)).toMatchObject({
      flags: [{ code: 'slope-line-poor' }, { code: 'slope-window-curved' }],
    });
  });

  it('takes bounds in stress and in shares of the peak', () => {
    expect(findSlope(loading, { way: 'regression', bounds: { over: 'stress', from: 2, to: 4 } }, 0)).toMatchObject({
      line: { fromIndex: 20, toIndex: 30 },
    });
    expect(findSlope(loading, share(0.25, 0.5), 0)).toMatchObject({ line: { fromIndex: 20, toIndex: 30 } });
  });

  it('says when the curve does not reach the upper bound, and not when it just does', () => {
    expect(findSlope(loading, strain('chord', 0.02, 0.05), 0).state).toBe('found');
    expect(findSlope(loading, strain('chord', 0.02, 0.051), 0)).toMatchObject({
      state: 'not-found',
      reason: 'not-reached',
    });
    expect(findSlope(loading, strain('regression', 0.02, 0.051), 0)).toMatchObject({
      state: 'not-found',
      reason: 'not-reached',
    });
  });

  it('refuses a part that does not rise', () => {
    expect(findSlope(loading, strain('chord', 0.001, 0.009), 0)).toMatchObject({
      state: 'not-found',
      reason: 'slope-missing',
    });
  });
});
