import { reduceForSpec } from '#test/support/reduce-for-spec.js';

const steps = [0, 1, 2, 3, 4, 5];

describe('modulus and stiffness', () => {
  it('give the stiffness of a component between bounds of its load', () => {
    const columns = { forceN: steps.map((mm) => 250 * mm), displacementMm: steps.map((mm) => 80 + mm) };
    const slope = { way: 'regression', bounds: { over: 'stress', from: 250, to: 1000 } } as const;
    const { result, missing } = reduceForSpec(columns, ['stiffness', 'modulus'], { kind: 'component', slope });
    expect(result('stiffness')).toMatchObject({
      value: expect.closeTo(250, 9),
      unit: 'N/mm',
      flags: [{ code: 'slope-window-short' }],
    });
    expect(missing('modulus')).toMatchObject({ reason: 'does-not-apply' });
  });

  it('give the shear modulus and the stiffness of a bar in torsion', () => {
    // Steel bar d 10 mm, L 200 mm, G 80 000 MPa: T = G·J·θ/L with J = πd⁴/32, 6.854 N·m per degree.
    const perDegree = (80_000 * (Math.PI * 10 ** 4)) / 32 / 200 / 1000 / (180 / Math.PI);
    const columns = { torqueNm: steps.map((degree) => perDegree * degree), angleDeg: steps };
    const slope = { way: 'chord', bounds: { over: 'peak-share', from: 0.2, to: 0.8 } } as const;
    const { value, result } = reduceForSpec(
      columns,
      ['modulus', 'stiffness', 'energy-to-peak'],
      { kind: 'torsion', section: 'round', slope },
      { diameterMm: 10, gaugeLengthMm: 200 },
    );
    expect(value('modulus')).toBeCloseTo(80_000, 6);
    expect(result('stiffness')).toMatchObject({ value: expect.closeTo(perDegree, 10), unit: 'N·m/°' });
    expect(value('energy-to-peak')).toBeCloseTo((perDegree * 25) / 2 / (180 / Math.PI), 10);
  });

  it('give the flexural modulus in four-point bending', () => {
    // EI·y at mid-span for thirds: 23·F·L³/1296 with F the whole load; E 3000 MPa, b 10, h 4, L 60 mm.
    const inertia = (10 * 4 ** 3) / 12;
    const perMm = (1296 * 3000 * inertia) / (23 * 60 ** 3);
    const columns = { forceN: steps.map((mm) => (perMm * mm) / 10), displacementMm: steps.map((mm) => mm / 10) };
    const bending = { spanMm: 60, innerSpanMm: 20, deflectionAt: 'mid-span' } as const;
    const slope = { way: 'chord', bounds: { over: 'strain', from: 0.0005, to: 0.0025 } } as const;
    const { value } = reduceForSpec(
      columns,
      ['modulus'],
      { kind: 'flexure-4-point', section: 'rectangle', bending, slope },
      { widthMm: 10, thicknessMm: 4 },
    );
    expect(value('modulus')).toBeCloseTo(3000, 8);
  });

  it('correct the stress for a large deflection, and leave the load alone', () => {
    // D 10 mm, L 50 mm, h 2 mm: 1 + 6·0.04 − 4·0.04·0.2 = 1.208 (ASTM D790).
    const columns = { forceN: [0, 20, 40], displacementMm: [0, 5, 10] };
    const bending = { spanMm: 50, deflectionAt: 'mid-span' } as const;
    const reduced = (correctLargeDeflection: boolean) =>
      reduceForSpec(
        columns,
        ['peak-stress', 'peak-load', 'energy-to-peak'],
        { kind: 'flexure-3-point', section: 'rectangle', bending: { ...bending, correctLargeDeflection } },
        { widthMm: 10, thicknessMm: 2 },
      );
    const plain = reduced(false);
    expect(plain.value('peak-stress')).toBeCloseTo(75, 10);
    expect(plain.outcome).toMatchObject({ flags: [{ code: 'deflection-large', found: expect.closeTo(0.2, 12) }] });
    expect(reduced(true).value('peak-stress')).toBeCloseTo(75 * 1.208, 10);
    expect(reduced(true).value('peak-load')).toBeCloseTo(40, 10);
    expect(reduced(true).value('energy-to-peak')).toBeCloseTo(0.2, 10);
  });
});
