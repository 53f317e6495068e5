import { dimensionProblems } from './dimension-problems.js';
import { dimensionsNeeded, isMeasured, meansOf } from './dimensions-needed.js';

describe('the lengths of a specimen', () => {
  it.each([
    ['tension', 'rectangle', ['widthMm', 'thicknessMm']],
    ['tension', 'round', ['diameterMm']],
    ['tension', 'tube', ['outerDiameterMm', 'innerDiameterMm']],
    ['tension', 'thread', []],
    ['peel', 'strip', ['widthMm']],
    ['tear', 'strip', ['thicknessMm']],
    ['lap-shear', 'rectangle', ['widthMm', 'overlapMm']],
    ['component', 'component', []],
    ['compression', 'round', ['diameterMm', 'heightMm']],
  ])('are those that its result follows from: %s of a %s', (testType, shape, keys) => {
    expect(dimensionsNeeded({ testType, shape, methodLengths: ['heightMm'] })).toEqual(keys);
  });

  it('of a compression leave out a height that the method does not name', () => {
    expect(dimensionsNeeded({ testType: 'compression', shape: 'round', methodLengths: [] })).toEqual(['diameterMm']);
  });

  it('are measured when each has a reading', () => {
    expect(isMeasured(['widthMm', 'thicknessMm'], { widthMm: [10], thicknessMm: [4] })).toBe(true);
    expect(isMeasured(['widthMm', 'thicknessMm'], { widthMm: [10], thicknessMm: [] })).toBe(false);
    expect(isMeasured([], {})).toBe(true);
  });

  it('are the means of their readings: (10.1 + 9.9) / 2 = 10', () => {
    expect(meansOf({ widthMm: [10.1, 9.9], thicknessMm: [] })).toEqual({ widthMm: expect.closeTo(10, 9) });
  });
});

describe('lengths that somebody sent', () => {
  const wrong = (dimensions: Record<string, number[]>) =>
    dimensionProblems(['widthMm'], dimensions).flatMap((problem) => problem?.field ?? []);

  it.each([
    [[10_000], []],
    [[10_000.1], ['dimensions.widthMm[0]']],
    [[10, 0], ['dimensions.widthMm[1]']],
    [[], ['dimensions.widthMm']],
    [Array<number>(20).fill(10), []],
    [Array<number>(21).fill(10), ['dimensions.widthMm']],
  ])('lie within the bounds of a length, at most 20 each (%#)', (readings, fields) => {
    expect(wrong({ widthMm: readings })).toEqual(fields);
  });

  it('are such as are measured on these specimens', () => {
    expect(wrong({ colour: [1] })).toEqual(['dimensions.colour']);
    expect(dimensionProblems([], { widthMm: [1] })[0]?.allowed).toContain('nothing is measured');
  });
});
