import { reduceCurve } from '../reduce-curve.js';
import { checkDimensions } from './check-dimensions.js';
import { checkRecipe } from './check-recipe.js';
import type { ReductionRecipe } from './recipe.js';

const recipe = (change: Partial<ReductionRecipe> = {}): ReductionRecipe => ({
  kind: 'tension',
  section: 'round',
  results: ['peak-load'],
  toe: { way: 'none' },
  break: { way: 'end-of-curve' },
  ...change,
});
const fields = (change: Partial<ReductionRecipe>) => checkRecipe(recipe(change)).map(({ field }) => field);

describe('checkRecipe', () => {
  it('finds nothing wrong with a plain recipe', () => {
    expect(checkRecipe(recipe())).toEqual([]);
  });

  it.each<[string, Partial<ReductionRecipe>, string[]]>([
    ['an unknown kind', { kind: 'bending' as ReductionRecipe['kind'] }, ['kind']],
    ['an unknown result', { results: ['peak-load', 'hardness' as 'peak-load'] }, ['results[1]']],
    [
      'bounds that cross',
      { slope: { way: 'chord', bounds: { over: 'strain', from: 0.0025, to: 0.0005 } } },
      ['slope.bounds.to'],
    ],
    [
      'a share of the peak above it',
      { slope: { way: 'chord', bounds: { over: 'peak-share', from: 0.1, to: 1.1 } } },
      ['slope.bounds.to'],
    ],
    ['a span share of nothing', { toe: { way: 'steepest', spanShare: 0 } }, ['toe.spanShare']],
    ['a break above the peak', { break: { way: 'load-drop', share: 1 } }, ['break.share']],
    ['an offset of nothing', { offsetStrains: [0.002, 0] }, ['offsetStrains[1]']],
    ['bending without spans', { kind: 'flexure-3-point' }, ['bending']],
    [
      'an inner span as wide as the outer',
      { kind: 'flexure-4-point', bending: { spanMm: 60, innerSpanMm: 60, deflectionAt: 'mid-span' } },
      ['bending.innerSpanMm'],
    ],
    ['a trace that ends before it begins', { trace: { fromMm: 30, toMm: 30, peakDropShare: 0.1 } }, ['trace.toMm']],
    [
      'hardening bounds that cross',
      { hardening: { fromStrain: 0.2, toStrain: 0.1, strain: 'plastic' } },
      ['hardening.toStrain'],
    ],
    ['a yield drop of nothing', { yieldPoint: { dropShare: 0, lastingStrain: 0.0005 } }, ['yieldPoint.dropShare']],
  ])('refuses %s', (_, change, expected) => {
    expect(fields(change)).toEqual(expected);
  });
});

describe('checkDimensions', () => {
  it('wants every size above zero and a bore smaller than its tube', () => {
    expect(checkDimensions({ widthMm: 10, thicknessMm: 4 })).toEqual([]);
    expect(checkDimensions({ widthMm: 0, areaMm2: -3 }).map(({ sentence }) => sentence)).toEqual([
      'widthMm is 0 mm; allowed is a number, more than 0 mm.',
      'areaMm2 is -3 mm²; allowed is a number, more than 0 mm².',
    ]);
    expect(checkDimensions({ diameterMm: 20, innerDiameterMm: 20 }).map(({ field }) => field)).toEqual([
      'innerDiameterMm',
    ]);
  });
});

it('a wrong recipe or dimension makes a refusal, not a crash', () => {
  const curve = { pointCount: 3, forceN: Float64Array.from([0, 5, 2]) };
  expect(reduceCurve(curve, recipe({ offsetStrains: [-1] }), {})).toMatchObject({
    state: 'refused',
    reasons: [{ reason: 'recipe-wrong', what: expect.stringContaining('offsetStrains[0] is -1') }],
  });
  expect(reduceCurve(curve, recipe(), { diameterMm: 0 })).toMatchObject({
    state: 'refused',
    reasons: [{ reason: 'recipe-wrong' }],
  });
  expect(reduceCurve({ pointCount: 2, displacementMm: Float64Array.from([0, 5]) }, recipe(), {})).toMatchObject({
    state: 'refused',
    reasons: [{ reason: 'no-load-column' }],
  });
  expect(reduceCurve({ pointCount: 2, forceN: Float64Array.from([0, Number.NaN]) }, recipe(), {})).toMatchObject({
    state: 'refused',
    reasons: [{ reason: 'not-finite' }],
  });
});
