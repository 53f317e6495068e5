import { CAUTION, FAIL, PASS } from '../rules/outcome.js';
import type { Parts } from '../rules/parts.js';
import { QuickReport } from '../rules/report.js';
import type { Check, Context, PartName } from '../rules/rule.js';
import { RULES } from '../rules/rules.js';
import { NO_RULES, rulesWhere, ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';

/** What a list of checks said of some parts. */
export interface Tally {
  fails: RuleSet;
  cautions: RuleSet;
  /** How badly: sum of the relative shortfalls, each counted up to 1. */
  severity: number;
}

/** A check with the set of the one rule that it belongs to. */
export interface RuleCheck extends Check {
  rule: RuleSet;
}

const ALL: readonly RuleCheck[] = RULES.flatMap(({ checks }, place) =>
  checks.map((check) => ({ ...check, rule: ruleSets.single(place) })),
);

/** The checks that look at exactly these parts, or at exactly these and where the cell hangs. */
function checksOf(...parts: readonly PartName[]): readonly RuleCheck[] {
  return ALL.filter(({ sees }) => {
    const own = parts.includes('frame') ? sees.filter((part) => part !== 'cellAt') : sees;
    return own.length === parts.length && own.every((part) => parts.includes(part));
  });
}

/** Parts that are chosen before a train is put together, each by itself and then with the frame. */
const CHOSEN: readonly PartName[] = ['cell', 'ends', 'faces', 'extensometer', 'chamber', 'guard', 'thermocouple'];

/** What the checks of a part alone, and of a frame with that part, are. */
export const PART_CHECKS = byPart((part) => checksOf(part));
export const FRAME_CHECKS = byPart((part) => checksOf('frame', part));

export type ChosenPart = 'cell' | 'ends' | 'faces' | 'extensometer' | 'chamber' | 'guard' | 'thermocouple';

function byPart(
  checks: (part: ChosenPart) => readonly RuleCheck[],
): Readonly<Record<ChosenPart, readonly RuleCheck[]>> {
  return Object.fromEntries(CHOSEN.map((part) => [part, checks(part as ChosenPart)])) as Record<
    ChosenPart,
    readonly RuleCheck[]
  >;
}

export const LAB_CHECKS = checksOf();
export const FRAME_ALONE_CHECKS = checksOf('frame');
export const ADAPTER_CHECKS = checksOf('adapters');

const JUDGED_EARLIER = new Set([
  ...LAB_CHECKS,
  ...FRAME_ALONE_CHECKS,
  ...ADAPTER_CHECKS,
  ...Object.values(PART_CHECKS).flat(),
  ...Object.values(FRAME_CHECKS).flat(),
]);

/** Checks that only a whole train can answer. */
export const WHOLE_CHECKS = ALL.filter((check) => !JUDGED_EARLIER.has(check));

/** Rules that a whole train may fail for what stands beside the specimen, so that another choice there could satisfy them. */
export const BESIDE_RULES = rulesThatSee(['extensometer', 'chamber', 'guard', 'thermocouple']);

/** The same with adapters: a longer stack, a lighter one, other times. */
export const ADAPTER_RULES = ruleSets.union(BESIDE_RULES, rulesThatSee(['adapters']));

/** Rules that a whole train fails with anything heavier on the cell as well. */
export const WEIGHT_RULES = rulesWhere(({ checks }) => checks.some(({ heavierFailsToo }) => heavierFailsToo));

/** Rules whose cautions are priced with the part that brings them; those of the others are priced at the end. */
export const PART_CAUTIONS = rulesWhere(({ cautionsByOnePart }) => cautionsByOnePart === true);

/** A frame that fails one of these rules by itself is ruled out. */
export const FRAME_RULES_OUT = rulesWhere(({ rulesOutFrame }) => rulesOutFrame === true);

function rulesThatSee(parts: readonly PartName[]): RuleSet {
  const seeing = WHOLE_CHECKS.filter(({ sees }) => sees.some((part) => parts.includes(part)));
  return seeing.reduce<RuleSet>((set, { rule }) => ruleSets.union(set, rule), NO_RULES);
}

const report = new QuickReport();

/** Runs checks and counts; no sentence is made. */
export function tally(checks: readonly RuleCheck[], parts: Parts, context: Context): Tally {
  let fails = NO_RULES;
  let cautions = NO_RULES;
  let severity = 0;
  for (const check of checks) {
    report.start();
    const outcome = check.judge(parts, context, report);
    if (outcome === PASS) continue;
    if (outcome === CAUTION) cautions = ruleSets.union(cautions, check.rule);
    else {
      fails = ruleSets.union(fails, check.rule);
      severity += report.severity;
    }
  }
  return { fails, cautions, severity };
}

/** Rules that fail, including those that are known to fail. It stops as soon as `enough` rules fail. */
export function failsTogether(
  checks: readonly RuleCheck[],
  parts: Parts,
  context: Context,
  known: RuleSet,
  enough: number,
): RuleSet {
  let fails = known;
  for (const check of checks) {
    if (ruleSets.common(fails, check.rule) !== NO_RULES || check.judge(parts, context, report) !== FAIL) continue;
    fails = ruleSets.union(fails, check.rule);
    if (ruleSets.count(fails) >= enough) return fails;
  }
  return fails;
}

/** Rules that caution, or null at the first that fails. */
export function cautionsUnlessFailing(checks: readonly RuleCheck[], parts: Parts, context: Context): RuleSet | null {
  let cautions = NO_RULES;
  for (const check of checks) {
    const outcome = check.judge(parts, context, report);
    if (outcome === PASS) continue;
    if (outcome === FAIL) return null;
    cautions = ruleSets.union(cautions, check.rule);
  }
  return cautions;
}
