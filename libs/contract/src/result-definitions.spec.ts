import { resultDefinition } from './result-definitions.js';
import type { ResultContext } from './result-definitions.js';

function of(testType: string, reduction: object, geometry: ResultContext['geometry'] = {}): ResultContext {
  const method = { testType, reduction, strain: null, loadingSpanRatio: 1 / 3 } as ResultContext['method'];
  return { method, geometry };
}
const metal = {
  kind: 'tension',
  slope: { way: 'regression', bounds: { over: 'yield-share', from: 0.1, to: 0.4 } },
  offsetStrains: [0.002],
  break: { way: 'load-drop', share: 0.5 },
  yieldPoint: { dropShare: 0.007, lastingStrain: 0.0005, strengthAfter: true },
};
const bar = of('tension', metal, { gaugeLengthMm: 50, gripSeparationMm: 80 });

describe('the definition of a result', () => {
  it.each([
    ['offset-yield', 'Rp0.2, proof strength: stress where the curve meets the line of the slope moved along by 0.2 %'],
    ['offset-yield@0.01', 'Rp1, proof strength: stress where the curve meets the line of the slope moved along by 1 %'],
    ['offset-yield', 'slope regression between 10 % and 40 % of the 0.2 % offset yield'],
    [
      'elongation-after-fracture',
      'A = (Lu − L0)/L0, permanent elongation measured on the marks after fracture, gauge length 50 mm',
    ],
    ['strain-at-break', 'over the gauge length 50 mm (without an extensometer over the grip separation 80 mm)'],
    ['strain-at-break', 'at break (last point before the force falls below 50 % of its highest)'],
    ['peak-stress', 'highest force over the original section; with a yield point, the highest after it'],
    ['upper-yield', 'drop of at least 0.7 %'],
  ])('of a metal in tension: %s', (key, words) => {
    expect(resultDefinition(key, bar)).toContain(words);
  });

  it('names the strain that the recipe reads a stress at, and the one that the key names before it', () => {
    const foam = of('compression', { kind: 'compression', atStrains: [0.1], peakUpToStrain: 0.1, loading: 4 });
    const words = 'stress where the strain first reaches 10 %, over the height of the specimen, in loading 4';
    expect(resultDefinition('stress-at-strain', foam)).toBe(`σ at 10 %, ${words}`);
    expect(resultDefinition('stress-at-strain@0.4', foam)).toContain('reaches 40 %');
    expect(resultDefinition('peak-stress', foam)).toBe('highest force over the original section, up to 10 % strain');
    const bracket = of('component', { kind: 'component', atStrains: [2] });
    expect(resultDefinition('stress-at-strain', bracket)).toBe('force where the travel first reaches 2 mm');
  });

  it('holds the span of a bending test, that of the request before that of the recipe', () => {
    const bending = { kind: 'flexure-4-point', bending: { spanMm: 60, deflectionAt: 'mid-span' } };
    expect(resultDefinition('peak-stress', of('flexure-4', bending, { spanMm: 90 }))).toContain(
      'span 90 mm, loads 30 mm apart',
    );
    expect(resultDefinition('peak-stress', of('flexure-3', bending))).toContain('span 60 mm');
  });

  it('says that a gauge length is not recorded rather than naming one', () => {
    expect(resultDefinition('elongation-after-fracture', of('tension', metal))).toContain('gauge length not recorded');
  });

  it('holds the part of a trace and the bounds of a slope in mm', () => {
    const trace = { fromMm: 25, toMm: 150, peakDropShare: 0.02, leaveOutShare: 0.25 };
    expect(resultDefinition('mean-peel', of('peel', { kind: 'peel', trace }))).toBe(
      'mean force over the width, from 25 mm to 150 mm of the trace, without the first 25 % of it',
    );
    const slope = { way: 'chord', bounds: { over: 'strain', from: 0.5, to: 2 } };
    expect(resultDefinition('stiffness', of('component', { kind: 'component', slope }))).toBe(
      'slope of force over travel, chord between 0.5 and 2 mm',
    );
  });

  it('is not made up for a key that nobody defined', () => {
    expect(resultDefinition('glossiness', bar)).toBeNull();
    expect(resultDefinition('toString', bar)).toBeNull();
  });
});
