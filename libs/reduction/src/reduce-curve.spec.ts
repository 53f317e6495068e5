import fc from 'fast-check';
import { createCurveReader } from './curve/create-curve-reader.js';
import type { Curve } from './curve/curve.js';
import { RESULT_KEYS } from './recipe/recipe.js';
import type { ReductionRecipe } from './recipe/recipe.js';
import { reduceCurve } from './reduce-curve.js';

const recipe: ReductionRecipe = {
  kind: 'tension',
  section: 'rectangle',
  results: RESULT_KEYS,
  slope: { way: 'regression', bounds: { over: 'peak-share', from: 0.1, to: 0.4 } },
  toe: { way: 'slope-line' },
  break: { way: 'load-drop', share: 0.5 },
  offsetStrains: [0.002],
  atStrains: [0.01],
  hardening: { fromStrain: 0.004, toStrain: 0.03, strain: 'plastic' },
};
const dimensions = { widthMm: 12.7, thicknessMm: 3.2, gaugeLengthMm: 50 };

/** A curve that bends over and then rises gently, so that rounding cannot move its peak: force in N by extension in mm. */
function bentCurve(stiffnessNPerMm: number, topN: number, rows: number): Curve {
  const extensionMm = Float64Array.from({ length: rows }, (_, row) => (2 * row) / (rows - 1));
  const forceN = extensionMm.map((mm) => topN * (Math.tanh((stiffnessNPerMm * mm) / topN) + mm / 20));
  return { pointCount: rows, forceN, extensionMm };
}

const bent = fc.record({
  stiffnessNPerMm: fc.double({ min: 10_000, max: 100_000, noNaN: true }),
  topN: fc.double({ min: 2000, max: 9000, noNaN: true }),
  rows: fc.integer({ min: 200, max: 600 }),
});

function values(curve: Curve): Record<string, number> {
  const outcome = reduceCurve(curve, recipe, dimensions);
  if (outcome.state === 'refused') throw new Error(JSON.stringify(outcome.reasons));
  return Object.fromEntries(outcome.results.map(({ key, value }) => [key, value]));
}

describe('reduceCurve', () => {
  it('says how strain and stress follow from the record, by which its points are drawn', () => {
    const curve = {
      pointCount: 4,
      forceN: Float64Array.of(0, -100, -300, -50),
      displacementMm: Float64Array.of(7, 6, 5, 3),
    };
    const plain: ReductionRecipe = { ...recipe, results: ['peak-stress'], toe: { way: 'none' } };
    const sizes = { widthMm: 10, thicknessMm: 4, gripDistanceMm: 50 };
    const outcome = reduceCurve(curve, plain, sizes);
    if (outcome.state === 'refused') throw new Error(JSON.stringify(outcome.reasons));
    // 10 mm × 4 mm = 40 mm²; both run to the negative side.
    expect(outcome.scales).toEqual({
      strain: { channel: 'displacementMm', factor: -1 / 50, start: 7 },
      stress: { channel: 'forceN', factor: -1 / 40, start: 0 },
    });
    expect(outcome.results[0]!.points[0]).toMatchObject({ x: (5 - 7) * (-1 / 50), y: -300 * (-1 / 40) });
    const withoutSection = reduceCurve(curve, { ...plain, results: ['peak-load'] }, { gripDistanceMm: 50 });
    expect(withoutSection).toMatchObject({ state: 'reduced', scales: null });
  });

  it('finds the same whichever sign the recorder gives load and travel', () => {
    fc.assert(
      fc.property(bent, ({ stiffnessNPerMm, topN, rows }) => {
        const curve = bentCurve(stiffnessNPerMm, topN, rows);
        const turned = {
          pointCount: rows,
          forceN: curve.forceN!.map((each) => -each),
          extensionMm: curve.extensionMm!.map((each) => -each),
        };
        expect(values(turned)).toEqual(values(curve));
      }),
      { numRuns: 50 },
    );
  });

  it('doubles every stress, and nothing else, when the force doubles', () => {
    fc.assert(
      fc.property(bent, ({ stiffnessNPerMm, topN, rows }) => {
        const once = bentCurve(stiffnessNPerMm, topN, rows);
        const twice = values({ ...once, forceN: once.forceN!.map((each) => 2 * each) });
        for (const [key, value] of Object.entries(values(once))) {
          const factor = /strain-at|exponent|travel/.test(key) && key !== 'stress-at-strain' ? 1 : 2;
          expect(twice[key]! / (factor * value)).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('finds the same whichever unit the file is written in', () => {
    fc.assert(
      fc.property(bent, ({ stiffnessNPerMm, topN, rows }) => {
        const { forceN, extensionMm } = bentCurve(stiffnessNPerMm, topN, rows);
        const written = (heading: string, perN: number, perMm: number) =>
          read(
            `${heading}\n${Array.from(forceN!, (force, row) => `${force * perN};${extensionMm![row]! * perMm}`).join('\n')}\n`,
          );
        const metric = values(written('Force [N];Extension [mm]', 1, 1));
        const other = values(written('Load [lbf];Extension [in]', 1 / 4.4482216152605, 1 / 25.4));
        for (const [key, value] of Object.entries(metric)) expect(other[key]! / value).toBeCloseTo(1, 9);
      }),
      { numRuns: 20 },
    );
  });

  it('lists every result asked for, found or missing, once each', () => {
    const outcome = reduceCurve(bentCurve(40_000, 5000, 300), recipe, dimensions);
    expect(outcome.state).toBe('reduced');
    if (outcome.state === 'reduced') {
      const keys = [...outcome.results, ...outcome.missing].map(({ key }) => key);
      expect([...keys].sort()).toEqual([...RESULT_KEYS].sort());
    }
  });

  it('gives an outcome that survives being kept as JSON', () => {
    const outcome = reduceCurve(bentCurve(40_000, 5000, 300), recipe, dimensions);
    expect(JSON.parse(JSON.stringify(outcome))).toEqual(outcome);
  });
});

function read(text: string): Curve {
  const reader = createCurveReader();
  reader.push(new TextEncoder().encode(text));
  const reading = reader.end();
  if (reading.state === 'refused') throw new Error(JSON.stringify(reading.problems));
  return reading.curve;
}
