import { readFileSync, readdirSync } from 'node:fs';
import {
  CURVE_CHANNELS,
  RESULT_KEYS,
  createCurveReader,
  proposeFormat,
  reduceCurve,
} from '#libs/reduction/src/index.js';
import type { CurveReading, ReductionRecipe, SpecimenDimensions, TestKind } from '#libs/reduction/src/index.js';
import { MUTATIONS, randomFrom } from '#test/curves/mutate.js';

const FILES = 5000;
const MOST_GROWTH_BYTES = 300e6;

const folder = new URL('./ok/', import.meta.url);
const originals = readdirSync(folder).map((name) => readFileSync(new URL(name, folder)).subarray(0, 6000));
const mutations = Object.entries(MUTATIONS);

const DIMENSIONS: SpecimenDimensions = {
  widthMm: 10,
  thicknessMm: 4,
  diameterMm: 6,
  innerDiameterMm: 4,
  gaugeLengthMm: 25,
  gripDistanceMm: 60,
  heightMm: 50,
  overlapMm: 12.5,
};
const KINDS: readonly TestKind[] = [
  'tension',
  'compression',
  'flexure-3-point',
  'flexure-4-point',
  'lap-shear',
  'peel',
  'tear',
  'torsion',
  'component',
];

function recipeFor(kind: TestKind, random: () => number): ReductionRecipe {
  return {
    kind,
    section: random() < 0.5 ? 'rectangle' : 'tube',
    results: RESULT_KEYS,
    slope: {
      way: random() < 0.5 ? 'chord' : 'regression',
      bounds: random() < 0.5 ? { over: 'peak-share', from: 0.1, to: 0.4 } : { over: 'strain', from: 0, to: 0.0025 },
    },
    toe: ([{ way: 'none' }, { way: 'slope-line' }, { way: 'steepest', spanShare: 0.1 }] as const)[
      Math.floor(3 * random())
    ]!,
    break: random() < 0.5 ? { way: 'end-of-curve' } : { way: 'load-drop', share: 0.7 },
    offsetStrains: [0.002],
    atStrains: [0.1],
    bending: { spanMm: 64, innerSpanMm: 32, deflectionAt: 'load-points', correctLargeDeflection: random() < 0.5 },
    trace: { fromMm: 0, toMm: 2, peakDropShare: 0.05 },
    hardening: { fromStrain: 0.0001, toStrain: 0.2, strain: random() < 0.5 ? 'plastic' : 'total' },
  };
}

function readCut(bytes: Buffer, random: () => number): CurveReading {
  const reader = createCurveReader({ limits: { maxBytes: 5e6, maxRows: 1e5 } });
  const size = 1 + Math.floor(random() * 9000);
  for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size));
  return reader.end();
}

/** What is wrong with a reading, in words; null when it is a whole curve or a refusal with reasons. */
function faultOf(reading: CurveReading): string | null {
  if (reading.state === 'refused')
    return reading.problems.length > 0 && reading.problemCount >= reading.problems.length
      ? null
      : 'a refusal without a reason';
  const { curve } = reading;
  const columns = CURVE_CHANNELS.flatMap((channel) => curve[channel] ?? []);
  const isWhole =
    columns.length > 1 &&
    columns.every((column) => column.length === curve.pointCount && column.every(Number.isFinite));
  return isWhole ? null : 'a curve with holes';
}

describe('mutated curve files', () => {
  it(`are read whole or refused with a reason, ${FILES} of them, and reduced without a crash`, () => {
    const startBytes = process.memoryUsage().rss;
    const counts = { read: 0, refused: 0, results: 0, flagged: 0 };
    for (let seed = 1; seed <= FILES; seed++) {
      const random = randomFrom(seed);
      const [, first] = mutations[seed % mutations.length]!;
      const [, second] = mutations[Math.floor(random() * mutations.length)]!;
      const original = originals[Math.floor(random() * originals.length)]!;
      const once = first(original, random);
      const bytes = random() < 0.4 ? second(once, random) : once;
      proposeFormat(bytes, true);
      const reading = readCut(bytes, random);
      expect([seed, faultOf(reading)]).toEqual([seed, null]);
      counts[reading.state]++;
      if (reading.state === 'refused') continue;
      const kind = KINDS[Math.floor(random() * KINDS.length)]!;
      const outcome = reduceCurve(reading.curve, recipeFor(kind, random), DIMENSIONS);
      if (outcome.state === 'refused') continue;
      const strange = outcome.results.filter(({ value }) => !Number.isFinite(value)).map(({ key }) => key);
      expect([seed, strange]).toEqual([seed, []]);
      counts.results += outcome.results.length;
      if (outcome.flags.length > 0 || outcome.results.some(({ flags }) => flags.length > 0)) counts.flagged++;
    }
    // Both ways must really occur, else the mutations are too harsh or too mild to mean anything.
    expect(counts.read).toBeGreaterThan(FILES / 10);
    expect(counts.refused).toBeGreaterThan(FILES / 10);
    expect(counts.results).toBeGreaterThan(FILES);
    expect(counts.flagged).toBeGreaterThan(100);
    expect(process.memoryUsage().rss - startBytes).toBeLessThan(MOST_GROWTH_BYTES);
  }, 120_000);
});
