import { LARGE_SETS, ruleSetsFor, SMALL_SETS } from './rule-set.js';
import type { RuleSet, RuleSets } from './rule-set.js';

/** The operations that the search relies on, for rulebooks of either size. */
const ENGINES: [string, RuleSets<RuleSet>, number][] = [
  ['a small rulebook', SMALL_SETS, 31],
  ['a large rulebook', LARGE_SETS, 100],
];

describe.each(ENGINES)('sets of rules in %s', (_name, sets, rules) => {
  const [first, last] = [sets.single(0), sets.single(rules - 1)];

  it('join, meet and differ', () => {
    const both = sets.union(first, last);
    expect(sets.count(both)).toBe(2);
    expect(sets.common(both, last)).toBe(last);
    expect(sets.without(both, last)).toBe(first);
    expect(sets.common(first, last)).toBe(sets.none);
  });

  it('count every rule once', () => {
    const all = Array.from({ length: rules }, (_, place) => sets.single(place)).reduce((a, b) => sets.union(a, b));
    expect(sets.count(all)).toBe(rules);
    expect(sets.count(sets.union(all, last))).toBe(rules);
    expect(sets.count(sets.none)).toBe(0);
  });

  it('have a set of all that holds at least every rule', () => {
    expect(sets.common(sets.all, last)).toBe(last);
    expect(sets.count(sets.all)).toBeGreaterThanOrEqual(rules);
  });
});

describe('the engine behind a rulebook', () => {
  it.each([
    [1, SMALL_SETS],
    [31, SMALL_SETS],
    [32, LARGE_SETS],
    [200, LARGE_SETS],
  ])('of %p rules keeps them apart', (rules, engine) => {
    expect(ruleSetsFor(rules)).toBe(engine);
  });
});
