import { reduceForSpec } from '#test/support/reduce-for-spec.js';

// 0 to 100 N over 2 mm, then 60 N at 4 mm: 100 N·mm to the peak, 160 N·mm more to the end.
const columns = { forceN: [0, 100, 60], displacementMm: [0, 2, 4] };

describe('energy', () => {
  it('is the area under load over travel, in joules', () => {
    const { result } = reduceForSpec(columns, ['energy-to-peak', 'energy-to-break'], { kind: 'component' });
    expect(result('energy-to-peak')).toMatchObject({ value: expect.closeTo(0.1, 12), unit: 'J' });
    expect(result('energy-to-break').value).toBeCloseTo(0.26, 12);
  });

  it('is the same whether drawn as load or as stress', () => {
    const { value } = reduceForSpec(
      columns,
      ['energy-to-break', 'work-density-to-break'],
      {},
      { areaMm2: 5, gripDistanceMm: 40 },
    );
    expect(value('energy-to-break')).toBeCloseTo(0.26, 12);
    expect(value('work-density-to-break')).toBeCloseTo(0.26 / (5 * 40 * 1e-3), 12); // J/cm³ is MJ/m³
  });

  it('needs a travel and a load', () => {
    expect(reduceForSpec({ forceN: [0, 2, 1] }, ['energy-to-peak']).missing('energy-to-peak')).toMatchObject({
      reason: 'no-travel-column',
    });
    expect(
      reduceForSpec(
        { stressMPa: [0, 2, 1], extensionMm: [0, 1, 2] },
        ['energy-to-peak'],
        {},
        { gaugeLengthMm: 50 },
      ).missing('energy-to-peak'),
    ).toMatchObject({ reason: 'no-load-column' });
  });
});
