import { controlChart } from './control-chart.js';

describe('controlChart', () => {
  it('sets limits 2.66 mean ranges around the mean, and 3.267 for the range', () => {
    // Mean 10.25; ranges 1, 2, 2 with mean 5/3.
    const chart = controlChart([10, 11, 9, 11]);
    expect(chart.centre).toBe(10.25);
    expect(chart.ranges).toEqual([1, 2, 2]);
    expect(chart.meanRange).toBeCloseTo(5 / 3, 12);
    expect((chart.upper - chart.centre) / chart.meanRange).toBeCloseTo(2.66, 2); // tables print 2.660, from d2 rounded to 1.128
    expect(chart.rangeUpper / chart.meanRange).toBeCloseTo(3.267, 3); // table factor 3.267
    expect(chart.signals).toEqual([]);
  });

  it('points at a value beyond the limits and at the jump to it', () => {
    const quiet = [50, 51, 49, 50, 52, 48, 50, 51];
    const chart = controlChart([...quiet, 70], quiet);
    expect(chart.signals).toEqual([
      { index: 8, rule: 'beyond-limits' },
      { index: 8, rule: 'range-beyond-limit' },
    ]);
  });

  it('points at the eighth value in a row on one side, and not at the seventh', () => {
    const reference = [9, 11, 9, 11];
    const above = (count: number) => controlChart([9, ...Array.from({ length: count }, () => 10.5)], reference).signals;
    expect(above(7)).toEqual([]);
    expect(above(8)).toEqual([{ index: 8, rule: 'run-of-eight' }]);
  });

  it('does not count a value on the centre into a run', () => {
    const values = [10.5, 10.5, 10.5, 10.5, 10, 10.5, 10.5, 10.5, 10.5];
    expect(controlChart(values, [9, 11, 9, 11]).signals).toEqual([]);
  });

  it('needs two values', () => {
    expect(() => controlChart([4])).toThrow('at least two');
  });
});
