import { EXTENSION_CLASSES } from '#libs/accuracy/src/index.js';
import type { ResultBasis } from '#libs/records/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { strainLengthOf, strainReadsOf } from './strain-doubt.js';
import type { StrainReads } from './strain-doubt.js';
import { expandedOfOne } from './uncertainty-view.js';
import type { Doubts } from './uncertainty-view.js';

const method = (id: string) => METHODS.find((each) => each.id === id)!;
const CLASS_1 = EXTENSION_CLASSES.find(({ standard, className }) => standard === 'ISO 9513' && className === '1')!;
const reads = (from: number, to: number): StrainReads => ({
  ...{ slope: { from, to }, at: null },
  sensitivity: { strain: 0, slope: 0 },
});

function relativePct(id: string, key: string, doubts: Omit<Doubts, 'forcePct'>, of: StrainReads | null): number {
  return expandedOfOne({ key, value: 100, reads: of }, method(id), { forcePct: 1, ...doubts })!;
}

describe('the uncertainty of a modulus', () => {
  const geometry = { shape: 'rectangle', widthMm: 10, thicknessMm: 4, gaugeLengthMm: 75 } as const;
  const extensometer = { limits: CLASS_1, strainLengthMm: 75 };

  // ISO 527-2, 0.05 % to 0.25 % of 75 mm are 0.15 mm, on which class 1 allows 3 µm: 2 %. Half-widths 2, 1 (force), 1 (gauge length), 0.5, 0.5 %:
  // U = 2·√((4 + 1 + 1 + 0.25 + 0.25)/3) = 2.94 %. With the relative limit of 1 % it would be 2.16 %.
  it('counts the absolute limit of the extensometer where that is larger', () => {
    const doubts = { geometry, extensometer };
    expect(relativePct('iso-527-2', 'modulus', doubts, reads(0.0005, 0.0025))).toBeCloseTo(2 * Math.sqrt(6.5 / 3), 5);
    expect(relativePct('iso-527-2', 'modulus', doubts, reads(0, 0.01))).toBeCloseTo(2 * Math.sqrt(3.5 / 3), 5);
    expect(relativePct('iso-527-2', 'modulus', doubts, null)).toBeCloseTo(2 * Math.sqrt(3.5 / 3), 5);
  });

  // ISO 178: s = ε·L²/(6·h) = 0.002·64²/24 mm = 0.341 mm.
  it('counts it on the deflection in bending', () => {
    expect(strainLengthOf(method('iso-178'), { shape: 'rectangle', spanMm: 64, thicknessMm: 4 })).toBeCloseTo(
      170.667,
      3,
    );
  });
});

describe('the uncertainty of lengths', () => {
  // ISO 527-3, a film of 50 µm ± 1 µm: 2 %; force 1 %, width 0.5 %: U = 2·√((1 + 4 + 0.25)/3) = 2.65 %.
  it('is that of the instrument where the length is small', () => {
    const geometry = { shape: 'strip', widthMm: 15, thicknessMm: 0.05 } as const;
    const U = relativePct('iso-527-3', 'peak-stress', { geometry, extensometer: null }, null);
    expect(U).toBeCloseTo(2 * Math.sqrt(5.25 / 3), 5);
  });
});

describe('the uncertainty of a stress that is read at a strain or along a slope', () => {
  const geometry = { shape: 'round', diameterMm: 10, gaugeLengthMm: 50 } as const;
  const basis: ResultBasis = {
    points: [
      { role: 'crossing', index: 90, x: 0.004, y: 400 },
      { role: 'from', index: 10, x: 0.0002, y: 40 },
      { role: 'to', index: 40, x: 0.0008, y: 160 },
    ],
    sensitivity: { strain: 0.1, slope: -0.05 },
  };

  // Force 1 %, diameter 2 × 0.5 %; at 0.2 mm 3 µm are 1.5 %, the gauge length is 1 %, on the 0.03 mm of the slope 3 µm are 10 %.
  it('has a term for each, as large as the curve says', () => {
    const doubts = { geometry, extensometer: { limits: CLASS_1, strainLengthMm: 50 } };
    const U = relativePct('iso-6892-1', 'offset-yield', doubts, strainReadsOf(basis));
    expect(U).toBeCloseTo(2 * Math.sqrt((1 + 1 + (0.1 * 1.5) ** 2 + 0.1 ** 2 + (0.05 * 10) ** 2) / 3), 5);
  });

  it('takes the travel of the crosshead for class 1 where there is no extensometer', () => {
    const U = relativePct('iso-6892-1', 'offset-yield', { geometry, extensometer: null }, strainReadsOf(basis));
    expect(U).toBeCloseTo(2 * Math.sqrt((2 + 0.1 ** 2 + 0.05 ** 2) / 3), 5);
  });

  it('is not made up where nobody kept the points: a typed figure', () => {
    expect(strainReadsOf({})).toBeNull();
  });
});
