import type { Ask, Geometry, Method } from '#libs/matching/src/index.js';
import { reduceCurve } from '#libs/reduction/src/index.js';
import type { Curve } from '#libs/reduction/src/index.js';
import { curveResults } from './curve-results.js';
import { drawnCurve, MOST_POINTS } from './drawn-curve.js';
import { dimensionsOf, measuredGeometry, nominalSizes, recipeOf } from './recipe-of.js';

const method = (testType: string, reduction: object, over: object = {}) =>
  ({
    testType,
    reduction: { toe: { way: 'none' }, break: { way: 'end-of-curve' }, ...reduction },
    usualResults: ['peak-stress'],
    loadingSpanRatio: null,
    strain: null,
    ...over,
  }) as unknown as Method;
const ask = (geometry: object, results: string[] = []) => ({ geometry, results }) as unknown as Ask;

const BAR: Geometry = Object.freeze({ shape: 'rectangle', widthMm: 10, thicknessMm: 4, gripSeparationMm: 100 });
/** 0 N to 400 N and down to 100 N, over 4 mm of travel. */
const CURVE: Curve = {
  pointCount: 5,
  forceN: Float64Array.of(0, 200, 400, 300, 100),
  displacementMm: Float64Array.of(0, 1, 2, 3, 4),
};

function results(of: Method, geometry: Geometry, wanted: string[], cell: Parameters<typeof curveResults>[4] = null) {
  const outcome = reduceCurve(CURVE, recipeOf(of, ask(geometry, wanted)), dimensionsOf(of, geometry));
  if (outcome.state !== 'reduced') throw new Error(JSON.stringify(outcome));
  return curveResults(outcome, CURVE, of, geometry, cell);
}

describe('the recipe of a batch', () => {
  it('takes section, spans and results from the ask, and always keeps the peak', () => {
    const bent = method(
      'flexure-4',
      { kind: 'flexure-4-point', bending: { spanMm: 60, deflectionAt: 'mid-span' } },
      { loadingSpanRatio: 0.5 },
    );
    expect(recipeOf(bent, ask({ shape: 'round', spanMm: 80 }, ['modulus', 'not-of-a-curve']))).toMatchObject({
      section: 'round',
      results: ['peak-load', 'modulus'],
      bending: { spanMm: 80, innerSpanMm: 40 },
    });
  });

  it('measures on the means of the readings, and on what was asked for where nothing was read', () => {
    const geometry = measuredGeometry(ask(BAR), { widthMm: [10.1, 10.3], thicknessMm: [] });
    expect(dimensionsOf(method('tension', {}), geometry)).toEqual({
      widthMm: expect.closeTo(10.2, 9),
      thicknessMm: 4,
      gripDistanceMm: 100,
    });
    const tube = dimensionsOf(method('tension', {}), {
      shape: 'tube',
      outerDiameterMm: 30,
      innerDiameterMm: 27,
      areaMm2: 1,
    });
    expect(tube).toEqual({ diameterMm: 30, innerDiameterMm: 27 });
  });
});

describe('the results of a curve', () => {
  const tension = method('tension', { kind: 'tension' });

  it('name the rows that they rest on, in every channel', () => {
    const [peak, stress] = results(tension, BAR, ['peak-stress']);
    expect([peak!.value, stress!.value]).toEqual([400, 10]); // 400 N / 40 mm²
    expect(peak!.basis['at']).toEqual([{ forceN: 400, displacementMm: 2 }]);
  });

  it('say at the peak what could not be had', () => {
    const { lacks } = results(tension, BAR, ['modulus', 'stress-at-strain'])[0]!.basis;
    expect(lacks).toContainEqual({
      ...{ key: 'modulus', isFinal: false },
      why: expect.stringMatching(/^Tensile modulus: /),
    });
  });

  it('tell a result that the test did not reach from one that somebody has still to measure', () => {
    const soft = method('tension', { kind: 'tension', atStrains: [5] });
    const { lacks } = results(soft, { ...BAR, gripSeparationMm: 100 }, [
      'stress-at-strain',
      'elongation-after-fracture',
    ])[0]!.basis;
    expect(lacks).toEqual([
      expect.objectContaining({ key: 'stress-at-strain', isFinal: true }),
      expect.objectContaining({ key: 'elongation-after-fracture', isFinal: false }),
    ]);
  });

  // ±45° laminate: τ = F/(2·b·h) = 400 N / (2 × 40 mm²) = 5 MPa (ASTM D3518)
  it('follow the law of the test where the recipe knows only F/A', () => {
    const shear = method('in-plane-shear', { kind: 'tension' });
    expect(results(shear, BAR, ['peak-stress']).find(({ key }) => key === 'peak-stress')!.value).toBeCloseTo(5, 9);
  });

  it('are told apart by their strain where there are several of a key', () => {
    const soft = method('tension', { kind: 'tension', atStrains: [0.01, 0.02] });
    expect(results(soft, BAR, ['stress-at-strain']).map(({ key }) => key)).toEqual([
      'peak-load',
      'stress-at-strain@0.01',
      'stress-at-strain@0.02',
    ]);
  });

  it.each([
    [400, 0],
    [399, 1],
  ])('on a cell rated for %p N carry %p warnings about it', (capacity, warnings) => {
    const [peak] = results(tension, BAR, [], { tag: 'LC-1', capacity, unit: 'N' });
    expect((peak!.basis['flags'] as string[]).filter((flag) => flag.includes('LC-1'))).toHaveLength(warnings);
  });
});

it('a stress says which size of its section nobody measured; a force does not', () => {
  const given = ask(BAR, ['peak-stress']);
  const tension = method('tension', { kind: 'tension' });
  const outcome = reduceCurve(CURVE, recipeOf(tension, given), dimensionsOf(tension, BAR));
  if (outcome.state !== 'reduced') throw new Error(JSON.stringify(outcome));
  const nominal = nominalSizes(given, { widthMm: [10.1], thicknessMm: [] });
  const [peak, stress] = curveResults(outcome, CURVE, tension, BAR, null, nominal);
  expect(peak!.basis['flags']).toEqual([]);
  expect(stress!.basis['flags']).toEqual(['Thickness was not measured on this specimen; the nominal 4 mm stands in.']);
});

describe('a curve to draw', () => {
  it('keeps the peak, the drop and the rows that results rest on', () => {
    const load = Float64Array.from({ length: 100_000 }, (_, row) => (row === 40_001 ? 9 : row === 70_007 ? -3 : 1));
    const drawn = drawnCurve({ pointCount: load.length, forceN: load, timeS: load.map((_, row) => row) }, [12_345, -1]);
    expect(drawn['forceN']!.length).toBeLessThanOrEqual(MOST_POINTS);
    expect([Math.max(...drawn['forceN']!), Math.min(...drawn['forceN']!)]).toEqual([9, -3]);
    expect(drawn['timeS']).toEqual(expect.arrayContaining([0, 12_345, 40_001, 70_007, 99_999]));
  });

  it('is whole when it is short', () => {
    expect(drawnCurve(CURVE, [2])).toEqual({ forceN: [0, 200, 400, 300, 100], displacementMm: [0, 1, 2, 3, 4] });
  });
});
