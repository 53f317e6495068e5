import type { CurveChannel } from '../curve/curve.js';
import type { ResultKey } from '../recipe/recipe.js';

/** What a reader of the result should know; it never changes the value. */
export type FlagCode =
  | 'slope-window-short'
  | 'slope-line-poor'
  | 'slope-from-crosshead'
  | 'no-yield-drop'
  | 'peak-at-end'
  | 'peak-not-passed'
  | 'peak-broad'
  | 'load-still-high-at-end'
  | 'load-flat-at-peak'
  | 'sign-turned'
  | 'time-runs-back'
  | 'starts-under-load'
  | 'foot-moved-far'
  | 'trace-short'
  | 'few-peaks'
  | 'break-near-mark'
  | 'deflection-large'
  | 'stress-at-strain-past-peak'
  | 'extension-ended'
  | 'extension-jumped'
  | 'load-fell-and-came-back'
  | 'loaded-again'
  | 'spike-left-out'
  | 'rows-missing'
  | 'slack-at-start'
  | 'coarse-at-yield'
  | 'strain-from-crosshead'
  | 'slope-window-curved'
  | 'chord-noisy'
  | 'peak-at-limit'
  | 'yields-without-hardening';

/** A remark on one result or on the whole curve, with the figure that caused it and the one that it was held against. */
export interface Flag {
  readonly code: FlagCode;
  readonly found: number;
  readonly allowed: number;
  readonly unit: string;
  /** First and last row that it is about, where it is about some rows only. */
  readonly rows?: readonly [number, number];
}

/** A place on the curve that a result rests on. */
export interface ResultPoint {
  readonly role:
    'peak' | 'break' | 'from' | 'to' | 'crossing' | 'upper-yield' | 'lower-yield' | 'at-strain' | 'trace-peak';
  /** Row of the curve, counted from 0; for an interpolated place the row just before it. */
  readonly index: number;
  /** Along and up in the units of the drawn axes (see `CurveAxes`), before any toe compensation. */
  readonly x: number;
  readonly y: number;
}

/** Relative change of a result for a relative change of the strain that it reads, and of the slope that it is drawn by. */
export interface Sensitivity {
  readonly strain: number;
  readonly slope: number;
}

/** One result in internal units (MPa, N, mm, fraction, J, N/mm, N·m): rounded by nobody yet. */
export interface ReducedResult {
  readonly key: ResultKey;
  /** The strain or offset that tells apart results of the same key, as a fraction (mm for a component); null where there is none. */
  readonly at: number | null;
  readonly value: number;
  readonly unit: string;
  readonly points: readonly ResultPoint[];
  readonly flags: readonly Flag[];
  /** Where a stress is read at a strain or along a slope; absent where the result follows from its formula alone. */
  readonly sensitivity?: Sensitivity;
}

export type MissingReason =
  | 'no-load-column'
  | 'no-travel-column'
  | 'dimension-missing'
  | 'recipe-missing'
  | 'slope-missing'
  | 'not-reached'
  | 'no-yield-drop'
  | 'too-few-points'
  | 'not-finite'
  | 'does-not-apply'
  | 'extension-ended';

/** A result that was asked for and could not be had; `what` names the dimension, column or parameter. */
export interface MissingResult {
  readonly key: ResultKey;
  readonly at: number | null;
  readonly reason: MissingReason;
  readonly what: string;
}

/** One axis out of a recorded channel: (recorded − start) · factor, in the unit of the axis. */
export interface AxisScale {
  readonly channel: CurveChannel;
  readonly factor: number;
  readonly start: number;
}

/** Units of what the picture draws: along (strain, mm, degrees) and up (MPa, N, N·m, N/mm). */
export interface CurveAxes {
  readonly xName: 'strain' | 'travel' | 'shear-strain' | 'angle' | 'row';
  readonly xUnit: string;
  readonly yName: 'stress' | 'load' | 'torque' | 'load-per-width' | 'load-per-thickness';
  readonly yUnit: string;
}

/** The line of the slope, for the picture: y = slope · (x − footX). */
export interface SlopeLine {
  readonly slope: number;
  readonly footX: number;
  readonly fromIndex: number;
  readonly toIndex: number;
  readonly rSquared: number;
}

/** Results with their grounds, or a refusal: a curve or recipe from which nothing can be had. */
export type ReductionOutcome =
  | {
      readonly state: 'reduced';
      readonly axes: CurveAxes;
      /** How strain and stress follow from the recorded channels; null where there are no such axes, or where the deflection bends the law. */
      readonly scales: { readonly strain: AxisScale; readonly stress: AxisScale } | null;
      readonly results: readonly ReducedResult[];
      readonly missing: readonly MissingResult[];
      readonly flags: readonly Flag[];
      readonly slope: SlopeLine | null;
      /** Strain (or mm) that toe compensation took off; 0 when it is off. */
      readonly toeShift: number;
    }
  | { readonly state: 'refused'; readonly reasons: readonly ReductionRefusal[] };

export interface ReductionRefusal {
  readonly reason:
    | 'too-few-points'
    | 'no-load-column'
    | 'dimension-missing'
    | 'recipe-wrong'
    | 'not-finite'
    | 'no-load'
    | 'loading-missing';
  readonly what: string;
}
