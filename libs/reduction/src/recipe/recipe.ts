/** What the specimen is subjected to; it settles which stress and strain are meant. */
export const TEST_KINDS = [
  'tension',
  'compression',
  'flexure-3-point',
  'flexure-4-point',
  'lap-shear',
  'short-beam-shear',
  'peel',
  'tear',
  'torsion',
  'component',
] as const;

export type TestKind = (typeof TEST_KINDS)[number];

/** Section of the specimen: which area, section modulus and polar moment are meant. */
export const SECTIONS = ['rectangle', 'round', 'tube', 'given-area'] as const;

export type Section = (typeof SECTIONS)[number];

/**
 * Where the straight part is looked for. `strain` bounds are fractions (mm for a component), `stress` MPa (N for a component),
 * `peak-share` fractions of the highest, `yield-share` fractions of the 0.2 % offset yield that the slope itself leads to.
 */
export interface SlopeBounds {
  readonly over: 'strain' | 'stress' | 'peak-share' | 'yield-share';
  readonly from: number;
  readonly to: number;
}

/** `chord` joins the two ends; `regression` is the least-squares line through every point between them. */
export interface SlopeRecipe {
  readonly way: 'chord' | 'regression';
  readonly bounds: SlopeBounds;
}

/**
 * How the foot of the curve is treated (ASTM D638 and D790, Annex A1): `none` leaves the strain as recorded;
 * `slope-line` moves zero strain to where the line of the slope meets zero stress; `steepest` does so with the
 * steepest line over `spanShare` of the strain at the peak; `take-up` with the first straight part above the slack that is
 * taken up at small loads, and leaves a curve without slack alone.
 */
export type ToeRecipe =
  | { readonly way: 'none' }
  | { readonly way: 'slope-line' }
  | { readonly way: 'steepest'; readonly spanShare: number }
  | { readonly way: 'take-up' };

/** `end-of-curve`: the last point; `load-drop`: the last point before the load falls below `share` of the peak. */
export type BreakRecipe = { readonly way: 'end-of-curve' } | { readonly way: 'load-drop'; readonly share: number };

/** Support and load of a bending test. Spans in mm. */
export interface BendingRecipe {
  readonly spanMm: number;
  /** Distance between the two inner loads; only for four-point bending. */
  readonly innerSpanMm?: number;
  /** Where the deflection is measured in four-point bending. */
  readonly deflectionAt: 'mid-span' | 'load-points';
  /**
   * Correction of stress for a large deflection (ASTM D790; three-point, rectangle): `true` always; `long-span` only where the span is
   * more than sixteen times the depth (with its tolerance, seventeen) and the deflection passes a tenth of the span.
   */
  readonly correctLargeDeflection?: boolean | 'long-span';
}

/** The part of a trace over which peel or tear is averaged, in mm of bond line (or tear) from the start of the curve. */
export interface TraceRecipe {
  readonly fromMm: number;
  readonly toMm: number;
  /** Crosshead travel for each mm of bond line: 2 for T and 180° peel, where both arms pay out; 1 where it is left out. */
  readonly travelPerMm?: number;
  /** Share of the trace that is left out, counted from its first peak (ISO 13937-2: the first quarter). */
  readonly leaveOutShare?: number;
  /** A peak counts in a tear trace when the load fell by this share of the highest load after it. */
  readonly peakDropShare: number;
}

/** True strain bounds, as fractions, of the strain-hardening regression, and which strain is meant (ISO 10275 uses plastic). */
export interface HardeningRecipe {
  readonly fromStrain: number;
  readonly toStrain: number;
  readonly strain: 'plastic' | 'total';
}

/** The parameters of a method that settle how its curves are reduced. Plain data, safe to keep as JSON. */
export interface ReductionRecipe {
  readonly kind: TestKind;
  readonly section: Section;
  /** Results asked for, in the order of the report. */
  readonly results: readonly ResultKey[];
  readonly slope?: SlopeRecipe;
  readonly toe: ToeRecipe;
  readonly break: BreakRecipe;
  /** The peak is looked for up to this strain only (fraction, from the zero that toe compensation gives): ISO 844 takes the strength below 10 %. */
  readonly peakUpToStrain?: number;
  /** Which loading of a record with several is read, counted from 1 (ISO 3386-1: the fourth); the whole record where it is left out. */
  readonly loading?: number;
  /** Offsets as strain fractions: 0.002 gives Rp0.2. */
  readonly offsetStrains?: readonly number[];
  /** Strains (mm for a component), as fractions, at which the stress is read: 0.1 for foam. */
  readonly atStrains?: readonly number[];
  readonly bending?: BendingRecipe;
  readonly trace?: TraceRecipe;
  readonly hardening?: HardeningRecipe;
  /** Torsion: elastic (16T/πd³) or fully plastic (12T/πd³, solid round) stress. */
  readonly torsionStress?: 'elastic' | 'plastic';
  /** Yield drop that makes an upper yield point, as a share of it (ISO 6892-1: 0.005), and the strain that it must last (0.0005). */
  readonly yieldPoint?: {
    readonly dropShare: number;
    readonly lastingStrain: number;
    /** Where there is a yield point, the strength is looked for after it, once the metal hardens (ISO 6892-1, Fm). */
    readonly strengthAfter?: boolean;
  };
}

/** Results that can be asked for. */
export const RESULT_KEYS = [
  'peak-load',
  'peak-stress',
  'strain-at-peak',
  'plastic-strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-break',
  'stress-at-break',
  'modulus',
  'offset-yield',
  'upper-yield',
  'lower-yield',
  'stress-at-strain',
  'energy-to-peak',
  'energy-to-break',
  'work-density-to-break',
  'hardening-exponent',
  'hardening-coefficient',
  'mean-peel',
  'least-peel',
  'highest-peel',
  'mean-tear-peaks',
  'median-tear-peaks',
  'stiffness',
  'travel-at-peak',
  'elongation-after-fracture',
  'reduction-of-area',
] as const;

export type ResultKey = (typeof RESULT_KEYS)[number];
