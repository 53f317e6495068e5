import { InvalidInput } from '#libs/errors/src/index.js';
import { percentBendingFlat, percentBendingRound, percentBendingTwoFaces } from './percent-bending.js';

describe('percentBendingFlat', () => {
  it('splits bending into thickness and width', () => {
    // front mean 1050 µε, mean (1050 + 950)/2 = 1000; thickness 50/1000; width 4/3 · 15/1000.
    const bending = percentBendingFlat(0.001035, 0.001065, 0.00095);
    expect(bending.meanStrain).toBeCloseTo(0.001, 12);
    expect(bending.thicknessPct).toBeCloseTo(5, 10);
    expect(bending.widthPct).toBeCloseTo(2, 10);
    expect(bending.totalPct).toBeCloseTo(7, 10);
  });

  it('is 0 in pure tension and in pure compression', () => {
    expect(percentBendingFlat(0.001, 0.001, 0.001).totalPct).toBe(0);
    expect(percentBendingFlat(-0.001, -0.001, -0.001).totalPct).toBe(0);
  });

  it('adds the two parts by size, whichever side they bend to', () => {
    expect(percentBendingFlat(0.000965, 0.000935, 0.00105).totalPct).toBeCloseTo(7, 10);
  });
});

describe('percentBendingTwoFaces', () => {
  it('of 1050 and 950 µε is 5 %', () => {
    expect(percentBendingTwoFaces(0.00105, 0.00095)).toBeCloseTo(5, 10);
  });
});

describe('percentBendingRound', () => {
  // A plane section: mean 1000 µε plus 60 µε of bending at an angle to the first gauge reads 1000 + 60 cos(angle − position).
  it.each([0, 17, 45, 90, 200])('finds 6 %% of bending at %p° to the first gauge', (angleDeg) => {
    const [e1, e2, e3, e4] = [0, 90, 180, 270].map(
      (at) => 0.001 + 0.00006 * Math.cos(((angleDeg - at) * Math.PI) / 180),
    );
    expect(percentBendingRound(e1!, e2!, e3!, e4!)).toBeCloseTo(6, 9);
  });
});

describe('percent bending without force', () => {
  it('is refused with what to do', () => {
    expect(() => percentBendingFlat(0.001, 0.001, -0.001)).toThrow(/Put force on the specimen/);
    expect(() => percentBendingTwoFaces(0.001, -0.001)).toThrow(InvalidInput);
    expect(() => percentBendingRound(0, 0, 0, 0)).toThrow(InvalidInput);
    expect(() => percentBendingRound(0, NaN, 0, 0)).toThrow(/e2/);
  });
});
