import { reduceForSpec } from '#test/support/reduce-for-spec.js';

// Callister, example 6.3: d 12.8 mm at 450 MPa carries 57 900 N.
const DIAMETER = { diameterMm: 12.8 };

describe('peak load and stress', () => {
  it('are the highest of the curve, at the first of equal rows', () => {
    const { result, flagsOf } = reduceForSpec(
      { forceN: [0, 30_000, 57_906, 57_906, 41_000] },
      ['peak-load', 'peak-stress'],
      { section: 'round' },
      DIAMETER,
    );
    expect(result('peak-load')).toMatchObject({ value: 57_906, unit: 'N', points: [{ role: 'peak', index: 2 }] });
    expect(result('peak-stress').value).toBeCloseTo(450, 1);
    expect(flagsOf('peak-load')).toEqual([]);
  });

  it('flag a load that stays flat at the top from the third row on', () => {
    const { flagsOf } = reduceForSpec({ forceN: [0, 5, 9, 9, 9, 2] }, ['peak-load']);
    expect(flagsOf('peak-load')).toEqual(['load-flat-at-peak']);
  });

  it('flag a load that still rises when the curve ends', () => {
    expect(reduceForSpec({ forceN: [0, 5, 9] }, ['peak-load']).flagsOf('peak-load')).toEqual(['peak-at-end']);
  });

  it('turn a compression that was recorded with a minus', () => {
    const columns = { forceN: [0, -400, -800, -300], displacementMm: [10, 9.5, 9, 8.5] };
    const { value, outcome } = reduceForSpec(
      columns,
      ['peak-load', 'peak-stress', 'strain-at-peak'],
      { kind: 'compression' },
      { areaMm2: 100, heightMm: 20 },
    );
    expect(value('peak-load')).toBe(800);
    expect(value('peak-stress')).toBe(8);
    expect(value('strain-at-peak')).toBeCloseTo(0.05, 12);
    expect(outcome).toMatchObject({ flags: [{ code: 'sign-turned', found: -8, unit: 'MPa' }] });
  });

  it('look for the strength of a foam below the strain that the recipe states', () => {
    const columns = { forceN: [0, 90, 80, 85, 300], displacementMm: [0, 2, 4, 5, 30] };
    const recipe = { kind: 'compression', peakUpToStrain: 0.1 } as const;
    expect(reduceForSpec(columns, ['peak-load'], recipe, { heightMm: 50 }).value('peak-load')).toBe(90);
  });

  it('say which dimension a stress lacks, and still give the load', () => {
    const { missing, value } = reduceForSpec(
      { forceN: [0, 70, 60] },
      ['peak-load', 'peak-stress'],
      { section: 'rectangle' },
      { widthMm: 10 },
    );
    expect(value('peak-load')).toBe(70);
    expect(missing('peak-stress')).toMatchObject({ reason: 'dimension-missing', what: 'thicknessMm' });
  });

  it('take the shear stress of a lap joint from width and overlap', () => {
    // 25 MPa on 25.4 mm × 12.7 mm is 8064.5 N.
    const { result } = reduceForSpec(
      { forceN: [0, 8064.5, 0] },
      ['peak-stress'],
      { kind: 'lap-shear' },
      { widthMm: 25.4, overlapMm: 12.7 },
    );
    expect(result('peak-stress').value).toBeCloseTo(25, 10);
  });

  it('take 0.75 F/(bh) for a short beam', () => {
    // ASTM D2344: 80 MPa on 8 mm × 4 mm is 3413 N.
    const { value } = reduceForSpec(
      { forceN: [0, 3413.333, 0] },
      ['peak-stress'],
      { kind: 'short-beam-shear' },
      { widthMm: 8, thicknessMm: 4 },
    );
    expect(value('peak-stress')).toBeCloseTo(80, 4);
  });

  it('take the torsional strength of a bar', () => {
    const { result } = reduceForSpec(
      { torqueNm: [0, 58.9049, 40] },
      ['peak-load', 'peak-stress'],
      { kind: 'torsion', section: 'round' },
      { diameterMm: 10 },
    );
    expect(result('peak-load')).toMatchObject({ value: 58.9049, unit: 'N·m' });
    expect(result('peak-stress').value).toBeCloseTo(300, 3);
  });

  // Callister's bending problems and textbook formulas: see each line.
  it.each([
    [
      'three-point, rectangle: 290 N on 10 × 5 mm, span 45 mm is 78.3 MPa',
      'flexure-3-point',
      'rectangle',
      290,
      { widthMm: 10, thicknessMm: 5 },
      { spanMm: 45 },
      78.3,
    ],
    [
      'three-point, round: 5560 N on R 9.12 mm, span 45 mm is 105 MPa',
      'flexure-3-point',
      'round',
      5560,
      { diameterMm: 18.24 },
      { spanMm: 45 },
      105,
    ],
    [
      'four-point, thirds: 33 750 N on 150 × 150 mm, span 450 mm is 4.5 MPa',
      'flexure-4-point',
      'rectangle',
      33_750,
      { widthMm: 150, thicknessMm: 150 },
      { spanMm: 450, innerSpanMm: 150 },
      4.5,
    ],
    [
      'four-point, half span: 456 N on 4 × 3 mm, span 40 mm is 380 MPa',
      'flexure-4-point',
      'rectangle',
      456,
      { widthMm: 4, thicknessMm: 3 },
      { spanMm: 40, innerSpanMm: 20 },
      380,
    ],
  ] as const)('take the flexural strength: %s', (_, kind, section, forceN, dimensions, spans, strength) => {
    const bending = { ...spans, deflectionAt: 'mid-span' } as const;
    const { value } = reduceForSpec(
      { forceN: [0, forceN, 0] },
      ['peak-stress'],
      { kind, section, bending },
      dimensions,
    );
    expect(value('peak-stress') / strength).toBeCloseTo(1, 2);
  });
});
