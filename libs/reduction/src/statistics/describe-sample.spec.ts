import { describeSample, lagOneCorrelation, medianOf } from './describe-sample.js';

describe('describeSample', () => {
  it('gives the figures of a sample worked out by hand', () => {
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squares 32, s = √(32/7); t(0.975, 7) = 2.3646 (GUM table G.2).
    const figures = describeSample([9, 2, 4, 5, 4, 7, 4, 5]);
    expect(figures).toMatchObject({ n: 8, mean: 5, median: 4.5, min: 2, max: 9 });
    expect(figures.sd).toBeCloseTo(Math.sqrt(32 / 7), 12);
    expect(figures.cvPct).toBeCloseTo(20 * Math.sqrt(32 / 7), 10);
    expect(figures.meanInterval!.to - 5).toBeCloseTo((2.3646 * Math.sqrt(32 / 7)) / Math.sqrt(8), 4);
    expect(figures.meanInterval!.from + figures.meanInterval!.to).toBeCloseTo(10, 12);
  });

  it('has no spread for one value, and no CV for a zero mean', () => {
    expect(describeSample([7])).toEqual({
      n: 1,
      mean: 7,
      sd: null,
      cvPct: null,
      median: 7,
      min: 7,
      max: 7,
      meanInterval: null,
    });
    expect(describeSample([-1, 1]).cvPct).toBeNull();
  });

  it('refuses no values and values that are not finite', () => {
    expect(() => describeSample([])).toThrow('at least one value');
    expect(() => describeSample([1, Number.NaN])).toThrow('finite');
  });
});

it('the median is the middle value, or the mean of the middle two', () => {
  expect(medianOf([30, 10, 20])).toBe(20);
  expect(medianOf([40, 10, 30, 20])).toBe(25);
});

it('a drift shows as a lag-one correlation near one, a zigzag near minus one', () => {
  expect(lagOneCorrelation(Array.from({ length: 50 }, (_, at) => at))).toBeGreaterThan(0.9);
  expect(lagOneCorrelation(Array.from({ length: 50 }, (_, at) => at % 2))).toBeLessThan(-0.9);
});
