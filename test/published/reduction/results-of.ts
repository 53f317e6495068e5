import { reduceCurve } from '#libs/reduction/src/index.js';
import type {
  Curve,
  ReducedResult,
  ReductionRecipe,
  ResultKey,
  SpecimenDimensions,
} from '#libs/reduction/src/index.js';

const PLAIN: ReductionRecipe = {
  kind: 'tension',
  section: 'given-area',
  results: [],
  toe: { way: 'none' },
  break: { way: 'end-of-curve' },
};

/** Reduces a curve by a plain recipe with these changes, and hands out results by key (and offset or strain). */
export function resultsOf(curve: Curve, recipe: Partial<ReductionRecipe>, dimensions: SpecimenDimensions = {}) {
  const outcome = reduceCurve(curve, { ...PLAIN, ...recipe }, dimensions);
  if (outcome.state === 'refused') throw new Error(JSON.stringify(outcome.reasons));
  const get = (key: ResultKey, at: number | null = null): ReducedResult => {
    const result = outcome.results.find((each) => each.key === key && each.at === at);
    if (!result) throw new Error(`${key} is missing: ${JSON.stringify(outcome.missing)}`);
    return result;
  };
  return { outcome, get, value: (key: ResultKey, at: number | null = null) => get(key, at).value };
}
