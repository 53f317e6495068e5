import { reduceForSpec } from '#test/support/reduce-for-spec.js';

// Gauge length 50 mm, area 20 mm², E 100 000 MPa: 2000 N is 100 MPa at 0.05 mm.
const columns = { forceN: [0, 1000, 2000, 3000, 2400, 500], extensionMm: [0, 0.025, 0.05, 2.5, 5, 5.1] };
const dimensions = { areaMm2: 20, gaugeLengthMm: 50 };
const slope = { way: 'chord', bounds: { over: 'stress', from: 0, to: 100 } } as const;
const all = [
  'strain-at-peak',
  'plastic-strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-break',
  'stress-at-break',
] as const;

describe('strains', () => {
  it('are extension over gauge length, and less the elastic part where asked', () => {
    const { value } = reduceForSpec(columns, all, { slope, break: { way: 'load-drop', share: 0.5 } }, dimensions);
    expect(value('strain-at-peak')).toBeCloseTo(0.05, 12);
    expect(value('plastic-strain-at-peak')).toBeCloseTo(0.05 - 0.0015, 12); // 150 MPa / 100 000 MPa
    expect(value('strain-at-break')).toBeCloseTo(0.1, 12); // last row before the load falls below 1500 N
    expect(value('stress-at-break')).toBe(120);
    expect(value('plastic-strain-at-break')).toBeCloseTo(0.1 - 0.0012, 12);
  });

  it('take the end of the curve as the break and say so when the load never fell as far', () => {
    const { result, flagsOf } = reduceForSpec(
      columns,
      ['strain-at-break'],
      { break: { way: 'load-drop', share: 0.1 } },
      dimensions,
    );
    expect(result('strain-at-break').points[0]!.index).toBe(5);
    expect(flagsOf('strain-at-break')).toEqual(['load-still-high-at-end']);
  });

  it('take the grip distance with crosshead travel, from its first row, and flag a modulus from it', () => {
    const fromCrosshead = { forceN: columns.forceN, displacementMm: [12, 12.1, 12.2, 16, 20, 21] };
    const { value, flagsOf } = reduceForSpec(
      fromCrosshead,
      ['strain-at-peak', 'modulus', 'travel-at-peak'],
      { slope },
      { areaMm2: 20, gripDistanceMm: 100 },
    );
    expect(value('strain-at-peak')).toBeCloseTo(0.04, 12);
    expect(value('travel-at-peak')).toBeCloseTo(4, 12);
    expect(value('modulus')).toBeCloseTo(50_000, 8);
    expect(flagsOf('modulus')).toContain('slope-from-crosshead');
  });

  it('name what is missing', () => {
    expect(reduceForSpec(columns, ['strain-at-peak'], {}, { areaMm2: 20 }).missing('strain-at-peak')).toMatchObject({
      reason: 'dimension-missing',
      what: 'gaugeLengthMm',
    });
    expect(reduceForSpec({ forceN: [0, 5, 3] }, ['strain-at-break']).missing('strain-at-break')).toMatchObject({
      reason: 'no-travel-column',
    });
  });

  it('have no meaning where only a travel is measured', () => {
    const lap = { forceN: [0, 5, 3], displacementMm: [0, 1, 2] };
    expect(
      reduceForSpec(lap, ['strain-at-peak'], { kind: 'lap-shear' }, { widthMm: 25, overlapMm: 12.5 }).missing(
        'strain-at-peak',
      ),
    ).toMatchObject({ reason: 'does-not-apply' });
  });
});
