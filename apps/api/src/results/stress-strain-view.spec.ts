import type { CurveView } from '#libs/contract/src/index.js';
import { stressStrainView } from './stress-strain-view.js';

const view: CurveView = {
  ...{ id: 'c', specimenLabel: 'R-1-1', sha256: '', fileName: 'bar.csv', rows: 3, marks: [] },
  columns: [
    { key: 'displacementMm', label: 'Travel', unit: 'mm' },
    { key: 'forceN', label: 'Force', unit: 'N' },
  ],
  points: {},
};
const curve = { specimenId: 's', drawn: { forceN: [0, -400, -300], displacementMm: [1, 0.5, 0] } };
// 40 mm², pulled as negative force; 100 mm between the grips, counted down from 1 mm.
const scales = {
  strain: { channel: 'displacementMm', factor: -0.01, start: 1 },
  stress: { channel: 'forceN', factor: -0.025, start: 0 },
} as const;
const figure = (key: string, basis: object, specimenId = 's') => ({
  ...{ specimenId, key, basis },
  origin: 'reduced' as const,
});
const peak = figure('peak-load', { scales, at: [{ forceN: -400, displacementMm: 0.5 }] });
const tension = { testType: 'tension' } as const;

describe('a curve as stress over strain', () => {
  it('follows from the record by the scales of its results, 400 N on 40 mm² are 10 MPa and 0.5 mm of 100 mm 0.5 %', () => {
    const drawn = stressStrainView(curve, view, [peak], tension)!;
    expect(drawn.columns.map(({ label, unit }) => `${label}, ${unit}`)).toEqual(['Strain, %', 'Stress, MPa']);
    expect(drawn.points['strainPct']).toEqual([0, 0.5, 1].map((value) => expect.closeTo(value, 9)));
    expect(drawn.points['stressMPa']).toEqual([0, 10, 7.5].map((value) => expect.closeTo(value, 9)));
    expect(drawn.marks).toEqual([{ key: 'peak-load', label: 'Peak force', x: 0.5, y: 10 }]);
  });

  it('is not drawn where the results were read without one of them, nor by the scales of another specimen', () => {
    expect(stressStrainView(curve, view, [figure('peak-load', { scales: null })], tension)).toBeNull();
    expect(stressStrainView(curve, view, [{ ...peak, specimenId: 'other' }], tension)).toBeNull();
    expect(stressStrainView(curve, view, [], tension)).toBeNull();
  });

  it('is not drawn a second time where the record holds stress and strain itself', () => {
    const columns = [
      { key: 'strain', label: 'Strain', unit: '%' },
      { key: 'stressMPa', label: 'Stress', unit: 'MPa' },
    ];
    expect(stressStrainView(curve, { ...view, columns }, [peak], tension)).toBeNull();
  });
});
