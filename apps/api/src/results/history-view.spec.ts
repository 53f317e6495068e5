import type { HistoryRow } from '#libs/records/src/index.js';
import { historyView } from './history-view.js';

const row = (values: number[], at: number): HistoryRow => ({
  ...{
    at: new Date(Date.UTC(2026, 0, at + 1)),
    requestReference: `R-${at}`,
    jobReference: `J-${at}`,
    batchLabel: '',
    material: 'PA66',
  },
  ...{ cellTag: 'LC-1', testType: 'tension', values },
});

describe('the history of a result', () => {
  it('shows means in the unit of the screen', () => {
    const { points, unit } = historyView('iso-527-2', 'strain-at-break', [row([0.03, 0.05], 0)]);
    expect([points[0]!.mean, points[0]!.n, unit]).toEqual([expect.closeTo(4, 9), 2, '%']);
  });

  it('has no limits before there are five points', () => {
    expect(
      historyView(
        'm',
        'modulus',
        [1, 2, 3, 4].map((value, at) => row([value], at)),
      ).chart,
    ).toBeNull();
  });

  // Moving ranges 1, 1, 1, 1, so that the limits are 10.4 ± 2.66 × 1 (3/d₂ = 2.660, ISO 7870-2 from memory)
  it('draws the limits of individuals from the moving ranges', () => {
    const { chart } = historyView(
      'm',
      'modulus',
      [10, 11, 10, 11, 10].map((value, at) => row([value], at)),
    );
    expect(chart).toMatchObject({
      centre: expect.closeTo(10.4, 9),
      upper: expect.closeTo(13.06, 2),
      lower: expect.closeTo(7.74, 2),
      signals: [],
    });
  });

  it('points at a run of eight on one side, and at the cell', () => {
    const values = [9, 9.1, 9, 9.1, 9, 9.1, 9, 9.1, 11, 11.1, 11, 11.1, 11, 11.1, 11, 11.1];
    const signals = historyView(
      'm',
      'modulus',
      values.map((value, at) => row([value], at)),
    ).chart!.signals;
    expect(signals.map(({ index }) => index)).toEqual(expect.arrayContaining([7, 15]));
    expect(signals.find(({ index }) => index === 15)!.sentence).toContain('LC-1');
  });
});
