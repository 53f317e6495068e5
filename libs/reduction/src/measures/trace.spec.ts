import { peaksBetween } from './tear-peaks.js';
import { reduceForSpec } from '#test/support/reduce-for-spec.js';

// A peel that climbs to 10 N in 10 mm, holds 10 N to 50 mm, then 20 N from 50 mm to 100 mm.
const columns = { forceN: [0, 10, 10, 20, 20], displacementMm: [5, 15, 55, 55, 105] };
const recipe = (fromMm: number, toMm: number) =>
  ({ kind: 'peel', trace: { fromMm, toMm, peakDropShare: 0.1 } }) as const;
const peel = (fromMm: number, toMm: number) =>
  reduceForSpec(columns, ['mean-peel', 'least-peel', 'highest-peel'], recipe(fromMm, toMm), { widthMm: 20 });

describe('peel', () => {
  it('averages by length, not by rows, with the ends found between rows', () => {
    // 30 mm at 10 N and 40 mm at 20 N: 1100 N·mm over 70 mm, on 20 mm of width.
    const { value, result } = peel(20, 90);
    expect(value('mean-peel')).toBeCloseTo(1100 / 70 / 20, 12);
    expect([value('least-peel'), value('highest-peel')]).toEqual([0.5, 1]);
    expect(result('mean-peel')).toMatchObject({
      unit: 'N/mm',
      points: [
        { role: 'from', x: 20 },
        { role: 'to', x: 90 },
      ],
      flags: [],
    });
  });

  it('judges a short trace up to its end and says so', () => {
    const { result } = peel(20, 101);
    expect(result('mean-peel').flags).toMatchObject([{ code: 'trace-short', found: 100, allowed: 101, unit: 'mm' }]);
    expect(peel(20, 100).result('mean-peel').flags).toEqual([]);
  });

  it('is missing when the trace ends before the bounds begin', () => {
    expect(peel(100, 120).missing('mean-peel')).toMatchObject({ reason: 'not-reached' });
  });
});

describe('tear', () => {
  it('takes the mean and the median of the peaks between the bounds', () => {
    const forceN = [0, 30, 20, 40, 22, 36, 21, 50, 20, 31, 18];
    const travel = forceN.map((_, row) => row);
    const { result } = reduceForSpec(
      { forceN, displacementMm: travel },
      ['mean-tear-peaks', 'median-tear-peaks'],
      { kind: 'tear', trace: { fromMm: 2, toMm: 10, peakDropShare: 0.2 } },
      { thicknessMm: 2 },
    );
    // Peaks 40, 36, 50 and 31 N on 2 mm: mean 39.25 N, median 38 N.
    expect(result('mean-tear-peaks').value).toBeCloseTo(39.25 / 2, 12);
    expect(result('median-tear-peaks').value).toBe(19);
    expect(
      result('mean-tear-peaks')
        .points.filter(({ role }) => role === 'trace-peak')
        .map(({ index }) => index),
    ).toEqual([3, 5, 7, 9]);
    expect(result('mean-tear-peaks').flags).toMatchObject([{ code: 'few-peaks', found: 4, allowed: 5 }]);
  });

  it('counts a peak only after a rise and a fall of the step', () => {
    const y = Float64Array.from([9, 2, 5, 4, 8, 3]);
    expect(peaksBetween(y, 0, 5, 3)).toEqual([4]);
    expect(peaksBetween(y, 0, 5, 1)).toEqual([2, 4]);
    expect(peaksBetween(y, 0, 4, 3)).toEqual([]);
  });
});
