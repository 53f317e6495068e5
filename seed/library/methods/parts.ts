import type {
  ClassNeed,
  Conditioning,
  GeometryKey,
  GeometryNeed,
  Method,
  ReportStep,
  Shape,
  SpeedStage,
  StrainRule,
} from '#libs/matching/src/index.js';
import type { ReductionRecipe } from '#libs/reduction/src/index.js';

type Optional =
  | 'version'
  | 'changed'
  | 'loadingSpanRatio'
  | 'endStrain'
  | 'modulusStrain'
  | 'strain'
  | 'conditioning'
  | 'alignmentMaxBendingPct'
  | 'hazards'
  | 'guardAlways'
  | 'reportSteps';

/** The part of a recipe that a method settles; section, spans and results follow from the ask. */
export type MethodRecipe = Omit<ReductionRecipe, 'section' | 'results'>;

/** A method with the usual answers filled in: first version, no modulus, no extensometer, nothing special. */
export function method(
  data: Omit<Method, Optional | 'reduction'> & Partial<Pick<Method, Optional>> & { reduction: MethodRecipe },
): Method {
  return {
    version: 1,
    loadingSpanRatio: null,
    endStrain: null,
    modulusStrain: null,
    strain: null,
    conditioning: null,
    alignmentMaxBendingPct: null,
    hazards: [],
    guardAlways: false,
    reportSteps: {},
    ...data,
  };
}

/** A figure that must be given. `usual` is what the method proposes, or null. Lengths in mm. */
export function need(
  key: GeometryKey,
  usual: number | null,
  [min, max]: readonly [number, number],
  help = '',
  shapes?: readonly Shape[],
): GeometryNeed {
  return { key, required: true, min, max, help, ...(usual === null ? {} : { usual }), ...(shapes ? { shapes } : {}) };
}

/** A figure that may be left open. */
export function may(...of: Parameters<typeof need>): GeometryNeed {
  return { ...need(...of), required: false };
}

export const RECTANGLE: readonly Shape[] = ['rectangle', 'strip'];
export const ROUND: readonly Shape[] = ['round'];
export const TUBE: readonly Shape[] = ['tube'];

export const ends = (): GeometryNeed[] => [
  may('endWidthMm', null, [0.1, 1000], 'Where the grips take hold, when it is wider than the body.'),
  may('endThicknessMm', null, [0.01, 500], 'Thickness or diameter where the grips take hold.'),
];

export const length = (usual: number | null, range: readonly [number, number] = [1, 3000]): GeometryNeed =>
  may('lengthMm', usual, range, 'Of the whole specimen.');

export const ISO_CLASS_1: ClassNeed = { standard: 'ISO 7500-1', className: '1', source: 'force class 1, the method' };
export const ISO_CLASS_2: ClassNeed = { standard: 'ISO 7500-1', className: '2', source: 'ISO 5893: class 2 is enough' };
export const E4: ClassNeed = { standard: 'ASTM E4', className: '1 %', source: 'ASTM E4, ±1 %' };

export function strain(
  standard: 'ISO 9513' | 'ASTM E83',
  className: string,
  demandedFor: readonly string[],
  preferredFor: readonly string[],
  usualGaugeLengthMm: number | null,
  source: string,
): StrainRule {
  return {
    measures: usualGaugeLengthMm === null ? 'deflection' : 'axial',
    standard,
    className,
    demandedFor,
    preferredFor,
    usualGaugeLengthMm,
    source,
  };
}

export function climate(
  hours: number,
  standard: string,
  temperatureC = 23,
  humidityPct: number | null = 50,
): Conditioning {
  return { hours, temperatureC, humidityPct, standard };
}

export function fixed(
  mmPerMin: number,
  tolerancePct: number | null,
  source: string,
  stage: SpeedStage['stage'] = 'whole',
): SpeedStage {
  return { stage, rule: { kind: 'fixed', mmPerMin }, tolerancePct, source };
}

export function asked(
  usualMmPerMin: number,
  [minMmPerMin, maxMmPerMin]: readonly [number, number],
  source: string,
  stage: SpeedStage['stage'] = 'whole',
): SpeedStage {
  return { stage, rule: { kind: 'asked', minMmPerMin, maxMmPerMin, usualMmPerMin }, tolerancePct: null, source };
}

export function strainRate(
  perS: number,
  over: 'parallelLengthMm' | 'gripSeparationMm' | 'gaugeLengthMm' | 'heightMm',
  tolerancePct: number | null,
  source: string,
  stage: SpeedStage['stage'] = 'whole',
): SpeedStage {
  return { stage, rule: { kind: 'strain-rate', perS, over }, tolerancePct, source };
}

export function flexureRate(outerFibrePerMin: number, tolerancePct: number | null, source: string): SpeedStage {
  return { stage: 'whole', rule: { kind: 'flexure-rate', outerFibrePerMin }, tolerancePct, source };
}

export function stressRate(mPaPerS: number, tolerancePct: number | null, source: string): SpeedStage {
  return { stage: 'whole', rule: { kind: 'stress-rate', mPaPerS }, tolerancePct, source };
}

export const figures = (significant: number): ReportStep => ({ significant });
export const step = (size: number): ReportStep => ({ step: size });

/** Chord modulus between two strains, as fractions. */
export const chord = (from: number, to: number) => ({ way: 'chord', bounds: { over: 'strain', from, to } }) as const;
/** Least-squares line between a tenth and four tenths of the yield (ISO 6892-1 annex on the modulus; from memory, medium). */
export const AT_YIELD = { way: 'regression', bounds: { over: 'yield-share', from: 0.1, to: 0.4 } } as const;
export const NO_TOE = { way: 'none' } as const;
export const TOE_BY_SLOPE = { way: 'slope-line' } as const;
/** Slack that is taken up at small loads moves zero; bending over and slow stiffening do not. */
export const TOE_BY_TAKE_UP = { way: 'take-up' } as const;
export const TO_THE_END = { way: 'end-of-curve' } as const;
export const AT_LOAD_DROP = { way: 'load-drop', share: 0.4 } as const;
