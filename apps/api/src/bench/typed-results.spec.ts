import type { Ask, Method } from '#libs/matching/src/index.js';
import { resultsNeeded, strengthFrom } from './typed-results.js';

const method = (testType: string, over: object = {}) =>
  ({
    testType,
    results: [],
    usualResults: ['peak-stress'],
    geometry: [],
    loadingSpanRatio: null,
    reduction: {},
    ...over,
  }) as unknown as Method;
const ask = (geometry: object, results: string[] = []) => ({ geometry, results }) as unknown as Ask;

const BAR = { shape: 'rectangle', widthMm: 10, thicknessMm: 4 };
const MEASURED = Object.freeze({ widthMm: [10.1, 9.9], thicknessMm: [4] });

describe('results that are wanted', () => {
  it('ask for the peak where the strength follows from it', () => {
    const needed = resultsNeeded(method('tension'), ask(BAR, ['modulus', 'peak-stress']));
    expect(needed.map(({ key, typed }) => [key, typed])).toEqual([
      ['peak-load', true],
      ['modulus', true],
      ['peak-stress', false],
    ]);
  });

  it('are the usual ones when nobody chose, and the names of the test are used', () => {
    expect(resultsNeeded(method('flexure-3'), ask(BAR)).map(({ label, unit }) => [label, unit])).toEqual([
      ['Peak force', 'N'],
      ['Flexural strength', 'MPa'],
    ]);
  });
});

describe('a strength', () => {
  it('follows from the peak and the means of the lengths: 2800 N / (10 mm × 4 mm) = 70 MPa', () => {
    expect(strengthFrom(2800, method('tension'), ask(BAR), MEASURED)).toMatchObject({
      key: 'peak-stress',
      value: expect.closeTo(70, 9),
      unit: 'MPa',
    });
  });

  // σ = 3FL/(2bd²) = 3 × 100 N × 64 mm / (2 × 10 mm × 16 mm²) = 60 MPa (textbook)
  it('is that of a beam in bending', () => {
    const found = strengthFrom(100, method('flexure-3'), ask({ ...BAR, spanMm: 64 }), MEASURED);
    expect(found?.value).toBeCloseTo(60, 9);
  });

  // 16T/(πd³) elastic, 12T/(πd³) plastic: T = 10 N·m, d = 10 mm: 50.93 and 38.20 MPa (textbook)
  it.each([
    ['elastic', {}, 50.9296],
    ['plastic', { reduction: { torsionStress: 'plastic' } }, 38.1972],
  ])('of a twisted bar is the %s one where the method says so', (_, over, expected) => {
    const found = strengthFrom(10, method('torsion', over), ask({ shape: 'round', diameterMm: 10 }), {
      diameterMm: [10],
    });
    expect(found?.value).toBeCloseTo(expected, 3);
  });

  it('is not said before the lengths are measured, nor for a component', () => {
    expect(strengthFrom(2800, method('tension'), ask(BAR), { widthMm: [10] })).toBeNull();
    expect(strengthFrom(2800, method('component'), ask({ shape: 'component' }), {})).toBeNull();
  });
});
