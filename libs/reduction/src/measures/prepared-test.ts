import type { Curve } from '../curve/curve.js';
import type { ReductionRecipe } from '../recipe/recipe.js';
import type { SpecimenDimensions } from '../recipe/specimen-dimensions.js';
import type { Fall } from '../signals/slips.js';
import type { CurveAxes, Flag, MissingReason, ResultPoint, Sensitivity, SlopeLine } from './reduction-outcome.js';

/** A curve turned and scaled for one recipe, with the places that several results share. */
export interface PreparedTest {
  readonly curve: Curve;
  readonly recipe: ReductionRecipe;
  readonly dimensions: SpecimenDimensions;
  readonly axes: CurveAxes;
  /** Along and up, positive in the direction of the test. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** y before a correction for large deflection; y itself where there is none. */
  readonly plainY: Float64Array;
  /** Recorded load is plainY / stressPerLoad (N, N·m); null where the file held stress only and no area is known. */
  readonly stressPerLoad: number | null;
  /** Travel in mm (or angle in degrees) is x / alongPerTravel; null where there is none. */
  readonly alongPerTravel: number | null;
  /** What stress or strain lacks, when the axes could only be load or travel. */
  readonly stressLacks: string | null;
  readonly strainLacks: string | null;
  readonly isCrosshead: boolean;
  readonly peakIndex: number;
  readonly breakIndex: number;
  readonly slope: SlopeLine | null;
  readonly slopeFlags: readonly Flag[];
  readonly slopeMissing: { readonly reason: MissingReason; readonly what: string } | null;
  /** Places that the slope rests on. */
  readonly slopePoints: readonly ResultPoint[];
  /** What toe compensation takes off x. */
  readonly toeShift: number;
  /** Row of the record that row 0 of x and y is: more than 0 where one loading of several is read. */
  readonly firstRow: number;
  /** Last row up to which x is the strain of the specimen: the extensometer was on it. */
  readonly lastStrainRow: number;
  /** Falls of the load that are no yielding. */
  readonly falls: readonly Fall[];
}

/** One value of a measure, or why there is none; `at` as in `ReducedResult`. */
export type Measured =
  | {
      readonly at: number | null;
      readonly value: number;
      readonly unit: string;
      readonly points: readonly ResultPoint[];
      readonly flags: readonly Flag[];
      readonly sensitivity?: Sensitivity;
    }
  | { readonly at: number | null; readonly reason: MissingReason; readonly what: string };

/** A measure is one rule of reduction. */
export type Measure = (test: PreparedTest) => readonly Measured[];

/** A value that rests on these points. */
export function measured(
  value: number,
  unit: string,
  points: readonly ResultPoint[],
  flags: readonly Flag[] = [],
  at: number | null = null,
): Measured[] {
  return [{ at, value, unit, points, flags }];
}

/** No value, and why. */
export function lacking(reason: MissingReason, what: string, at: number | null = null): Measured[] {
  return [{ at, reason, what }];
}

/** A row of the curve as a point of the picture. */
export function pointAt(
  { x, y }: Pick<PreparedTest, 'x' | 'y'>,
  role: ResultPoint['role'],
  index: number,
): ResultPoint {
  return { role, index, x: x[index]!, y: y[index]! };
}
