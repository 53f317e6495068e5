import { missingResults } from './missing-results.js';

const WANTED = Object.freeze([
  { key: 'modulus', label: 'Tensile modulus' },
  { key: 'elongation-after-fracture', label: 'Elongation after fracture' },
  { key: 'stress-at-strain', label: 'Stress at strain' },
]);
const TESTED = Object.freeze({ fate: 'tested', found: ['modulus'], missingWhy: {}, curveLacks: [] });
const keysOf = (specimen: Parameters<typeof missingResults>[1]) =>
  missingResults(WANTED, specimen).map(({ key }) => key);

describe('a tested specimen', () => {
  it('lacks what was asked for and has no figure', () => {
    expect(missingResults(WANTED, TESTED)).toEqual([
      { key: 'elongation-after-fracture', label: 'Elongation after fracture', why: null, hint: null },
      { key: 'stress-at-strain', label: 'Stress at strain', why: null, hint: null },
    ]);
  });

  it('has a result when it has it at one strain', () => {
    expect(keysOf({ ...TESTED, found: ['modulus', 'stress-at-strain@0.1'] })).toEqual(['elongation-after-fracture']);
  });

  it('lacks nothing once it has everything', () => {
    expect(keysOf({ ...TESTED, found: WANTED.map(({ key }) => key) })).toEqual([]);
  });

  it('gives the reason that a person said before that of the curve', () => {
    const curveLacks = [{ key: 'stress-at-strain', why: 'The curve does not reach it.', isFinal: true }];
    const of = (missingWhy: Record<string, string>) =>
      missingResults(WANTED, { ...TESTED, missingWhy, curveLacks }).map(({ why }) => why);
    expect(of({})).toEqual([null, 'The curve does not reach it.']);
    expect(of({ 'stress-at-strain': 'It broke at 80 %' })).toEqual([null, 'It broke at 80 %']);
  });

  it('is not excused by a length that nobody measured: that is a hint', () => {
    const curveLacks = [{ key: 'elongation-after-fracture', why: 'A dimension is missing.', isFinal: false }];
    expect(missingResults(WANTED, { ...TESTED, curveLacks })[0]).toMatchObject({
      why: null,
      hint: 'A dimension is missing.',
    });
  });
});

it.each(['arrived', 'expected', 'invalid', 'not-tested'])('a specimen that is %s lacks no result', (fate) => {
  expect(keysOf({ ...TESTED, fate })).toEqual([]);
});
