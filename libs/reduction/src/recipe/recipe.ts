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

/** Where the straight part is looked for. `strain` bounds are fractions (mm for a component), `stress` MPa (N for a component), `peak-share` fractions of the highest. */
export interface SlopeBounds {
  readonly over: 'strain' | 'stress' | 'peak-share';
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
 * steepest line over `spanShare` of the strain at the peak.
 */
export type ToeRecipe =
  { readonly way: 'none' } | { readonly way: 'slope-line' } | { readonly way: 'steepest'; readonly spanShare: number };

/** `end-of-curve`: the last point; `load-drop`: the last point before the load falls below `share` of the peak. */
export type BreakRecipe = { readonly way: 'end-of-curve' } | { readonly way: 'load-drop'; readonly share: number };

/** Support and load of a bending test. Spans in mm. */
export interface BendingRecipe {
  readonly spanMm: number;
  /** Distance between the two inner loads; only for four-point bending. */
  readonly innerSpanMm?: number;
  /** Where the deflection is measured in four-point bending. */
  readonly deflectionAt: 'mid-span' | 'load-points';
  /** ASTM D790 correction of stress for large spans and deflections (three-point, rectangle). */
  readonly correctLargeDeflection?: boolean;
}

/** The part of a trace over which peel or tear is averaged, in mm of travel from the start of the curve. */
export interface TraceRecipe {
  readonly fromMm: number;
  readonly toMm: number;
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
  /** The peak is looked for up to this strain only (fraction): ISO 844 takes the strength below 10 %. */
  readonly peakUpToStrain?: number;
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
  readonly yieldPoint?: { readonly dropShare: number; readonly lastingStrain: number };
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
