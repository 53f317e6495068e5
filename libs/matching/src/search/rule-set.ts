import { RULES } from '../rules/rules.js';
import type { RuleCode } from '../rules/rules.js';

/** A set of rules. Only the functions of {@link ruleSets} look inside. */
export type RuleSet = number | bigint;

/** What the search does with sets of rules. Methods, so that one engine for each size of the rulebook can stand behind them. */
export interface RuleSets<S> {
  readonly none: S;
  readonly all: S;
  /** The set of one rule, by its place in the rulebook. */
  single(place: number): S;
  union(a: S, b: S): S;
  common(a: S, b: S): S;
  without(a: S, b: S): S;
  /** Number of rules in a set. */
  count(set: S): number;
}

/** One bit a rule in a machine word, for rulebooks of up to 31 rules. */
export const SMALL_SETS: RuleSets<number> = {
  none: 0,
  all: ~0,
  single: (place) => 1 << place,
  union: (a, b) => a | b,
  common: (a, b) => a & b,
  without: (a, b) => a & ~b,
  count(set) {
    let left = set - ((set >>> 1) & 0x55555555);
    left = (left & 0x33333333) + ((left >>> 2) & 0x33333333);
    return (((left + (left >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
  },
};

/** The same for rulebooks of any size. */
export const LARGE_SETS: RuleSets<bigint> = {
  none: 0n,
  all: -1n,
  single: (place) => 1n << BigInt(place),
  union: (a, b) => a | b,
  common: (a, b) => a & b,
  without: (a, b) => a & ~b,
  count(set) {
    if (set < 0n) return Infinity;
    let count = 0;
    for (let left = set; left > 0n; left &= left - 1n) count += 1;
    return count;
  },
};

const LARGEST_SMALL = 31;

export function ruleSetsFor(rules: number): RuleSets<RuleSet> {
  return rules <= LARGEST_SMALL ? SMALL_SETS : LARGE_SETS;
}

export const ruleSets: RuleSets<RuleSet> = ruleSetsFor(RULES.length);
export const NO_RULES: RuleSet = ruleSets.none;

/** The set of these rules. */
export function setOf(...codes: readonly RuleCode[]): RuleSet {
  return rulesWhere(({ code }) => codes.includes(code));
}

/** The set of the rules for which something holds. */
export function rulesWhere(holds: (rule: (typeof RULES)[number]) => boolean): RuleSet {
  return RULES.reduce<RuleSet>(
    (set, rule, place) => (holds(rule) ? ruleSets.union(set, ruleSets.single(place)) : set),
    NO_RULES,
  );
}
