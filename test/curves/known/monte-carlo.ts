import { allowedPct, strainReadsOf } from '#apps/api/src/results/strain-doubt.js';
import type { ExtensometerDoubt } from '#apps/api/src/results/strain-doubt.js';
import { lengthPct } from '#apps/api/src/results/uncertainty-view.js';
import { curveResults } from '#apps/worker/src/read-curves/curve-results.js';
import type { CurveResult } from '#apps/worker/src/read-curves/curve-results.js';
import { dimensionsOf, recipeOf } from '#apps/worker/src/read-curves/recipe-of.js';
import type { Ask, Geometry } from '#libs/matching/src/index.js';
import { reduceCurve } from '#libs/reduction/src/index.js';
import type { Curve } from '#libs/reduction/src/index.js';
import type { KnownMethod } from './known-methods.js';
import type { Recording } from './recording.js';
import { leastTrain } from './stated-uncertainty.js';

/*
 * Propagation of distributions (JCGM 101:2008): a record and its sizes are spoiled by errors within the limits of a train, as rectangular
 * distributions, and reduced each time. Draws lie evenly in all errors at once, so that a few hundred settle the spread.
 */

const SIZES = ['widthMm', 'thicknessMm', 'diameterMm', 'overlapMm', 'spanMm'] as const;

/** Errors of one trial, each between −1 and 1 of its limit. */
type Errors = Readonly<Record<'force' | 'gaugeLength' | 'slope' | 'strain' | (typeof SIZES)[number], number>>;
const ERRORS = ['force', 'gaugeLength', 'slope', 'strain', ...SIZES] as const;

/** Standard deviation of each result over the trials, by key, relative to its mean. */
export function spreadOfResults(known: KnownMethod, recording: Recording, trials: number): Map<string, number> {
  const train = leastTrain(known);
  const slope = slopeOf(known, recording);
  const found = Array.from({ length: trials }, (_, trial) => {
    const errors = Object.fromEntries(ERRORS.map((name, at) => [name, evenly(trial, at)])) as Errors;
    const forceGain = 1 + (errors.force * train.forcePct!) / 100;
    const curve = spoiled(recording, forceGain, (extensionMm) =>
      train.extensometer ? extensionMm + errorOf(extensionMm, errors, slope, train.extensometer) : extensionMm,
    );
    return resultsOf(known, curve, sizesOf(known, errors));
  });
  return new Map(found[0]!.map(({ key }, at) => [key, relativeSpread(found.map((trial) => trial[at]!.value))]));
}

/** The root of xᵈ⁺¹ = x + 1 for d = 9 errors: multiples of its powers, less their whole parts, fill a cube of d sides evenly (Roberts 2018). */
const RATIO = 1.0757660660868371;

function evenly(trial: number, error: number): number {
  return 2 * ((0.5 + (trial + 1) * RATIO ** -(error + 1)) % 1) - 1;
}

/** Strains between which the slope of the unspoiled record is drawn. */
function slopeOf(known: KnownMethod, recording: Recording): { from: number; to: number } {
  const results = resultsOf(known, spoiled(recording, 1, (mm) => mm), known.geometry);
  const slope = results.map(({ basis }) => strainReadsOf(basis)?.slope).find((each) => each);
  return slope ?? { from: 0, to: 0 };
}

/** A slope whose bounds are strains is drawn up to another row where strains are recorded too small. */
const BEYOND_SLOPE = 1.5;

/**
 * Error of an extension, mm: up to the slope it grows evenly by what the class allows of the difference that the slope rests on, after
 * it to what it allows of the whole extension, which is an error of its own.
 */
function errorOf(
  extensionMm: number,
  errors: Errors,
  { from, to }: { from: number; to: number },
  extensometer: ExtensometerDoubt,
): number {
  const length = extensometer.strainLengthMm;
  const ofWhole = (errors.strain * allowedPct(extensometer, length && extensionMm / length) * extensionMm) / 100;
  if (length === null || to === 0) return ofWhole;
  const strain = extensionMm / length;
  const ofSlope = (errors.slope * allowedPct(extensometer, to - from) * (to - from) * length) / 100;
  const above = BEYOND_SLOPE * to;
  if (strain <= above) return (ofSlope * strain) / (to - from);
  const along = Math.min(1, (strain - above) / above);
  return ((ofSlope * above) / (to - from)) * (1 - along) + ofWhole * along;
}

function spoiled({ timeS, load, travel, extension, isTorque }: Recording, gain: number, over: (mm: number) => number): Curve {
  const loads = load.map((value) => value * gain);
  const common = { pointCount: load.length, timeS, ...(isTorque ? { torqueNm: loads, angleDeg: travel } : { forceN: loads, displacementMm: travel }) };
  return extension ? { ...common, extensionMm: extension.map(over) } : common;
}

function sizesOf({ method, geometry }: KnownMethod, errors: Errors): Geometry {
  const gauge = geometry.gaugeLengthMm ?? method.strain?.usualGaugeLengthMm;
  const { extensometer } = leastTrain({ method, geometry });
  const measured = SIZES.flatMap((key) => {
    const size = geometry[key];
    return size === undefined ? [] : [[key, size * (1 + (errors[key] * lengthPct(size)) / 100)] as const];
  });
  const gaugePct = extensometer?.limits.gaugeLengthPct ?? 0;
  return {
    ...geometry,
    ...Object.fromEntries(measured),
    ...(gauge ? { gaugeLengthMm: gauge * (1 + (errors.gaugeLength * gaugePct) / 100) } : {}),
  };
}

function resultsOf({ method }: KnownMethod, curve: Curve, geometry: Geometry): CurveResult[] {
  const ask = { geometry, results: method.results } as unknown as Ask;
  const outcome = reduceCurve(curve, recipeOf(method, ask), dimensionsOf(method, geometry));
  if (outcome.state === 'refused') throw new Error(outcome.reasons[0]!.reason);
  return curveResults(outcome, curve, method, geometry, null);
}

function relativeSpread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1)) / Math.abs(mean);
}
