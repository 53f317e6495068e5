import type { RuleCode } from '../answer.js';
import type { Parts } from '../parts.js';
import { spare } from '../rules/rule.js';
import type { Check, Context } from '../rules/rule.js';
import { RULES } from '../rules/rules.js';

/** What a set of checks said: one bit a rule, in the order of the rulebook. */
export interface Tally {
  fails: number;
  cautions: number;
  /** How badly: sum of the relative shortfalls, each counted up to 1. */
  severity: number;
}

export interface BitCheck extends Required<Pick<Check, 'sees' | 'judge' | 'passes'>> {
  bit: number;
  otherwise: 'caution' | 'fail' | null;
}

const never = () => false;

const ALL: readonly BitCheck[] = RULES.flatMap(({ checks }, index) =>
  checks.map(({ sees, judge, passes = never, otherwise = null }) => ({
    bit: 1 << index,
    sees,
    judge,
    passes,
    otherwise,
  })),
);

/** Checks that look at nothing beyond these parts, and at each of `at`. */
export function checksOf(within: readonly (keyof Parts)[], at: readonly (keyof Parts)[] = within): readonly BitCheck[] {
  return ALL.filter(
    ({ sees }) => sees.every((part) => within.includes(part)) && at.every((part) => sees.includes(part)),
  );
}

/** Every check that none of the given lists holds. */
export function otherChecks(...lists: readonly (readonly BitCheck[])[]): readonly BitCheck[] {
  const taken = new Set(lists.flat());
  return ALL.filter((each) => !taken.has(each));
}

export function bitOf(code: RuleCode): number {
  return 1 << RULES.findIndex((rule) => rule.code === code);
}

/** Runs checks and counts; no sentence is made. */
export function tally(checks: readonly BitCheck[], parts: Parts, context: Context): Tally {
  let fails = 0;
  let cautions = 0;
  let severity = 0;
  for (const { bit, judge, passes, otherwise } of checks) {
    if (passes(parts, context)) continue;
    if (otherwise === 'caution') {
      cautions |= bit;
      continue;
    }
    const found = judge(parts, context);
    if (!found || found.outcome === 'pass') continue;
    if (found.outcome === 'caution') cautions |= bit;
    else {
      fails |= bit;
      severity += Math.min(1, -Math.min(0, finite(spare(found))));
    }
  }
  return { fails, cautions, severity };
}

/**
 * Bits of the rules that fail, together with those that are known to, and without a word on how badly. It ends as soon as `enough` fail.
 */
export function failsTogether(
  checks: readonly BitCheck[],
  parts: Parts,
  context: Context,
  known: number,
  enough: number,
): number {
  let fails = known;
  for (const { bit, judge, passes, otherwise } of checks) {
    if ((fails & bit) !== 0 || passes(parts, context) || otherwise === 'caution') continue;
    if (otherwise === null && judge(parts, context)?.outcome !== 'fail') continue;
    fails |= bit;
    if (countBits(fails) >= enough) return fails;
  }
  return fails;
}

/** Bits of the rules that caution, or null at the first that fails. */
export function cautionsUnlessFailing(checks: readonly BitCheck[], parts: Parts, context: Context): number | null {
  let cautions = 0;
  for (const { bit, judge, passes, otherwise } of checks) {
    if (passes(parts, context)) continue;
    const outcome = otherwise ?? judge(parts, context)?.outcome;
    if (outcome === 'fail') return null;
    if (outcome === 'caution') cautions |= bit;
  }
  return cautions;
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : -1;
}

/** Number of rules in a set of bits. */
export function countBits(bits: number): number {
  let left = bits - ((bits >>> 1) & 0x55555555);
  left = (left & 0x33333333) + ((left >>> 2) & 0x33333333);
  return (((left + (left >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
