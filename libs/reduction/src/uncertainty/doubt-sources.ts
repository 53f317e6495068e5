import type { UncertaintyComponent } from './uncertainty-types.js';

/** A doubt in percent of its quantity. */
export type RelativeDoubt = Pick<UncertaintyComponent, 'kind' | 'amount' | 'coverageK' | 'degreesOfFreedom'>;

/**
 * What is known about the equipment and the specimen, in percent. Leave out what does not enter the result.
 * Class limits are half-widths of a rectangular distribution: class 1 force is `{ kind: 'rectangular', amount: 1 }`.
 */
export interface DoubtSources {
  /** Indication of force (or torque): ISO 7500-1 class limit, and the calibration's own U. */
  readonly force?: readonly RelativeDoubt[];
  readonly width?: readonly RelativeDoubt[];
  readonly thickness?: readonly RelativeDoubt[];
  readonly diameter?: readonly RelativeDoubt[];
  /** Area as a whole, where it was not computed from sizes. */
  readonly area?: readonly RelativeDoubt[];
  readonly gaugeLength?: readonly RelativeDoubt[];
  /** Extension or deflection: ISO 9513 class limit. */
  readonly extension?: readonly RelativeDoubt[];
  readonly span?: readonly RelativeDoubt[];
  /** Overlap of a lap joint. */
  readonly overlap?: readonly RelativeDoubt[];
  /** Scatter of the specimens, when the result is a mean: s/√n in percent with n − 1 degrees of freedom. */
  readonly repeatability?: RelativeDoubt;
}
