import type { Ask, Method } from '#libs/matching/src/index.js';
import { figureProblem, readTyped, resultsNeeded, strengthFrom } from './typed-results.js';

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
const ASKED = { method: method('tension'), ask: ask(BAR) };
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

describe('a figure as typed', () => {
  it.each([
    ['peak-load', 2.8, 'kN', 2800, 'N'],
    ['peak-load', 2800, 'N', 2800, 'N'],
    ['peak-load', 100, 'lbf', 444.822, 'N'],
    ['modulus', 8.9, 'GPa', 8900, 'MPa'],
    ['strain-at-break', 3.6, '%', 0.036, 'mm/mm'],
    ['strain-at-break', 0.036, 'mm/mm', 0.036, 'mm/mm'],
    ['mean-peel', 2, 'kN/m', 2, 'N/mm'],
    ['stiffness', 1.5, 'kN/mm', 1500, 'N/mm'],
    ['energy-to-break', 1200, 'mJ', 1.2, 'J'],
  ])('%s %p %s is kept as %p %s', (key, value, unit, kept, keptUnit) => {
    expect(readTyped({ key, value, unit }, method('tension'), 0)).toEqual({
      key,
      value: expect.closeTo(kept, 3),
      unit: keptUnit,
    });
  });

  it('is a torque in a torsion test', () => {
    expect(readTyped({ key: 'peak-load', value: 250, unit: 'N·cm' }, method('torsion'), 0)).toEqual({
      key: 'peak-load',
      value: 2.5,
      unit: 'N·m',
    });
  });

  it('in a unit of another quantity is refused by its place', () => {
    expect(readTyped({ key: 'peak-load', value: 1, unit: 'mm' }, method('tension'), 2)).toMatchObject({
      field: 'results[2].unit',
      found: 'mm',
    });
  });

  // Rated for 5000 N: exactly that passes, a step more does not, nor does nothing at all.
  it.each([
    [5000, false],
    [5000.1, true],
    [0, true],
    [0.1, false],
  ])('of a peak of %p N is refused: %p', (value, refused) => {
    const bounds = { capacity: 5000, cellTag: 'LC-1', loadUnit: 'N' };
    expect(figureProblem({ key: 'peak-load', value, unit: 'N' }, 0, bounds, ASKED) !== null).toBe(refused);
  });

  // σ = F/A with A = 10 mm × 4 mm: 250 MPa are 10 kN, twice what the cell is rated for.
  it.each([
    ['peak-stress', 'MPa', 250, false],
    ['peak-stress', 'MPa', 251, true],
    ['modulus', 'MPa', 210_000, false],
    ['modulus', 'MPa', -1, true],
    ['strain-at-break', 'mm/mm', -0.01, false],
    ['elongation-after-fracture', 'mm/mm', -0.03, true],
  ])('of %p in %p of %p on a cell for 5 kN is refused: %p', (key, unit, value, refused) => {
    const bounds = { capacity: 5000, cellTag: 'LC-1', loadUnit: 'N' };
    expect(figureProblem({ key, value, unit }, 0, bounds, ASKED) !== null).toBe(refused);
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
