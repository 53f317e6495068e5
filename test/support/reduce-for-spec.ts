import { reduceCurve } from '#libs/reduction/src/index.js';
import type {
  Curve,
  MissingResult,
  ReducedResult,
  ReductionRecipe,
  ResultKey,
  SpecimenDimensions,
} from '#libs/reduction/src/index.js';

/** For the specs beside the measures: the shortest recipe that asks for these results, and answers by key. */
export function reduceForSpec(
  columns: Record<string, readonly number[]>,
  results: readonly ResultKey[],
  recipe: Partial<ReductionRecipe> = {},
  dimensions: SpecimenDimensions = {},
) {
  const named = Object.fromEntries(
    Object.entries(columns).map(([channel, values]) => [channel, Float64Array.from(values)]),
  );
  const curve: Curve = { pointCount: Object.values(columns)[0]!.length, ...named };
  const plain: ReductionRecipe = {
    kind: 'tension',
    section: 'given-area',
    results,
    toe: { way: 'none' },
    break: { way: 'end-of-curve' },
  };
  const outcome = reduceCurve(Object.freeze(curve), { ...plain, ...recipe }, Object.freeze({ ...dimensions }));
  if (outcome.state === 'refused') throw new Error(JSON.stringify(outcome.reasons));
  const result = (key: ResultKey, at: number | null = null): ReducedResult => {
    const found = outcome.results.find((each) => each.key === key && each.at === at);
    if (!found) throw new Error(`${key} is missing: ${JSON.stringify(outcome.missing)}`);
    return found;
  };
  const missing = (key: ResultKey): MissingResult | undefined => outcome.missing.find((each) => each.key === key);
  const flagsOf = (key: ResultKey) => result(key).flags.map(({ code }) => code);
  return {
    outcome,
    result,
    missing,
    flagsOf,
    value: (key: ResultKey, at: number | null = null) => result(key, at).value,
  };
}
