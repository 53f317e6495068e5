import { reduceForSpec } from '#test/support/reduce-for-spec.js';

/** A bar 10 mm wide over 51.2 mm of span, 10 N for each mm of deflection up to 8 mm (16 % of the span). */
function strength(thicknessMm: number, correctLargeDeflection: boolean | 'long-span'): number {
  const deflection = Array.from({ length: 81 }, (_, row) => row / 10);
  const { value } = reduceForSpec(
    { forceN: deflection.map((mm) => 10 * mm), extensionMm: deflection },
    ['peak-stress'],
    {
      ...{ kind: 'flexure-3-point', section: 'rectangle' },
      bending: { spanMm: 51.2, deflectionAt: 'mid-span', correctLargeDeflection },
    },
    { widthMm: 10, thicknessMm },
  );
  return value('peak-stress');
}

/** σ = 3FL/(2bh²) at 80 N, and 1 + 6(D/L)² − 4(h/L)(D/L) at 8 mm (ASTM D790, from memory). */
const plain = (h: number) => (3 * 80 * 51.2) / (2 * 10 * h * h);
const corrected = (h: number) => plain(h) * (1 + 6 * (8 / 51.2) ** 2 - (4 * h * 8) / 51.2 ** 2);

describe('the stress of a bar that bends far', () => {
  it('is not corrected at a span of 16:1, nor where the bar measures a little less than it was asked for', () => {
    expect(strength(3.2, 'long-span')).toBeCloseTo(plain(3.2), 10);
    expect(strength(3.18, 'long-span')).toBeCloseTo(plain(3.18), 10);
    expect(strength(51.2 / 17, 'long-span')).toBeCloseTo(plain(51.2 / 17), 10);
  });

  it('is corrected above 17:1, or where the method always asks for it', () => {
    expect(strength(3, 'long-span')).toBeCloseTo(corrected(3), 10);
    expect(strength(3.2, true)).toBeCloseTo(corrected(3.2), 10);
  });
});
