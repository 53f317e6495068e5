import type { ResultKey } from '../recipe/recipe.js';
import { buildBudget } from './build-budget.js';
import type { Coverage, UncertaintyBudget, UncertaintyComponent } from './uncertainty-types.js';

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
  /** Scatter of the specimens, when the result is a mean: s/√n in percent with n − 1 degrees of freedom. */
  readonly repeatability?: RelativeDoubt;
}

type Source = Exclude<keyof DoubtSources, 'repeatability'>;

/** Exponent with which each source enters y = c·Π xᵖ; its sensitivity in relative terms. */
export type Exponents = Readonly<Partial<Record<Source, number>>>;

const AXIAL_STRESS: Exponents = { force: 1, area: -1, width: -1, thickness: -1, diameter: -2 };
const BENDING_STRESS: Exponents = { force: 1, span: 1, width: -1, thickness: -2, diameter: -3 };
const AXIAL_STRAIN: Exponents = { extension: 1, gaugeLength: -1 };
const BENDING_STRAIN: Exponents = { extension: 1, thickness: 1, diameter: 1, span: -2 };
const AXIAL_MODULUS: Exponents = { ...AXIAL_STRESS, extension: -1, gaugeLength: 1 };
const BENDING_MODULUS: Exponents = { force: 1, span: 3, width: -1, thickness: -3, diameter: -4, extension: -1 };

/** How a result hangs on what was measured. */
export type ResultModel = 'axial' | 'bending' | 'torsion' | 'per-width' | 'load';

/** Exponents of a result (from its formula); null for one that follows no such product. */
export function exponentsOf(key: ResultKey, model: ResultModel): Exponents | null {
  if (key === 'peak-load') return { force: 1 };
  if (key === 'travel-at-peak') return { extension: 1 };
  if (key === 'stiffness') return { force: 1, extension: -1 };
  if (key === 'energy-to-peak' || key === 'energy-to-break') return { force: 1, extension: 1 };
  if (key === 'elongation-after-fracture') return AXIAL_STRAIN;
  if (model === 'load') return { force: 1 };
  if (PEEL_AND_TEAR.includes(key) || model === 'per-width') return { force: 1, width: -1, thickness: -1 };
  if (STRESSES.includes(key))
    return model === 'bending' ? BENDING_STRESS : model === 'torsion' ? { force: 1, diameter: -3 } : AXIAL_STRESS;
  if (STRAINS.includes(key)) return model === 'bending' ? BENDING_STRAIN : AXIAL_STRAIN;
  if (key === 'modulus') return model === 'bending' ? BENDING_MODULUS : model === 'torsion' ? null : AXIAL_MODULUS;
  return null;
}

const PEEL_AND_TEAR: readonly ResultKey[] = [
  'mean-peel',
  'least-peel',
  'highest-peel',
  'mean-tear-peaks',
  'median-tear-peaks',
];
const STRESSES: readonly ResultKey[] = [
  'peak-stress',
  'stress-at-break',
  'offset-yield',
  'upper-yield',
  'lower-yield',
  'stress-at-strain',
];
const STRAINS: readonly ResultKey[] = [
  'strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-peak',
  'plastic-strain-at-break',
];

/** A result with its doubt: the budget in percent, and U in the unit of the result. */
export interface ResultUncertainty {
  readonly budget: UncertaintyBudget;
  readonly relativeExpandedPct: number;
  readonly expanded: number;
}

/**
 * Uncertainty of one result from its sources, in relative terms (JCGM 100:2008, 5.1.6). The slope's own doubt, which
 * moves an offset yield of a curve that bends slowly, is not in it: add it through `extra`.
 *
 * @returns null when no source enters the result, or the value is zero
 * @throws {InvalidInput} for a negative amount
 */
export function uncertaintyOfResult(
  value: number,
  exponents: Exponents,
  sources: DoubtSources,
  coverage?: Coverage,
  extra: readonly UncertaintyComponent[] = [],
): ResultUncertainty | null {
  const entering = (Object.keys(exponents) as Source[]).flatMap((source) =>
    (sources[source] ?? []).map((doubt, at) => ({
      ...doubt,
      name: at === 0 ? source : `${source} ${at + 1}`,
      sensitivity: exponents[source]!,
    })),
  );
  const { repeatability } = sources;
  const components = [
    ...entering,
    ...(repeatability ? [{ ...repeatability, name: 'repeatability', sensitivity: 1 }] : []),
    ...extra,
  ];
  if (components.length === 0 || value === 0) return null;
  const budget = buildBudget(components, coverage);
  return { budget, relativeExpandedPct: budget.expanded, expanded: (Math.abs(value) * budget.expanded) / 100 };
}

/** Scatter of n specimens as a component of the doubt of their mean, in percent; null for fewer than two or a zero mean. */
export function repeatabilityOf(mean: number, sd: number | null, n: number): RelativeDoubt | null {
  if (sd === null || n < 2 || mean === 0) return null;
  return { kind: 'standard', amount: (100 * sd) / Math.sqrt(n) / Math.abs(mean), degreesOfFreedom: n - 1 };
}
