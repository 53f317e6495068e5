import { buildBudget } from './build-budget.js';
import type { DoubtSources, RelativeDoubt } from './doubt-sources.js';
import type { Exponents, Source } from './exponents-of.js';
import type { Coverage, UncertaintyBudget, UncertaintyComponent } from './uncertainty-types.js';

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
