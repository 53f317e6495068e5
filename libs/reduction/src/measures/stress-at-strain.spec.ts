import { reduceForSpec } from '#test/support/reduce-for-spec.js';

const columns = { forceN: [0, 200, 250, 240, 900], displacementMm: [0, 2, 3, 6, 30] };
const foam = (atStrains: number[]) =>
  reduceForSpec(columns, ['stress-at-strain'], { kind: 'compression', atStrains }, { areaMm2: 1000, heightMm: 50 });

describe('stress at a strain', () => {
  it('is read between rows, at each strain asked for', () => {
    const { value, result } = foam([0.05, 0.1]);
    expect(value('stress-at-strain', 0.05)).toBeCloseTo(0.225, 12); // 2.5 mm: halfway from 200 N to 250 N
    expect(value('stress-at-strain', 0.1)).toBeCloseTo(0.25 - 0.01 * (2 / 3), 12); // 5 mm: two thirds from 250 N to 240 N
    expect(result('stress-at-strain', 0.1).points).toMatchObject([
      { role: 'at-strain', index: 2, x: expect.closeTo(0.1, 12) },
    ]);
  });

  it('is missing past the end of the curve', () => {
    expect(foam([0.6]).value('stress-at-strain', 0.6)).toBe(0.9);
    expect(foam([0.61]).missing('stress-at-strain')).toMatchObject({ at: 0.61, reason: 'not-reached' });
  });

  it('says when the peak came before', () => {
    const { result } = reduceForSpec(
      columns,
      ['stress-at-strain'],
      { kind: 'compression', atStrains: [0.1], peakUpToStrain: 0.1 },
      { areaMm2: 1000, heightMm: 50 },
    );
    expect(result('stress-at-strain', 0.1).flags).toMatchObject([
      { code: 'stress-at-strain-past-peak', found: expect.closeTo(0.06, 12), allowed: 0.1 },
    ]);
  });
});
