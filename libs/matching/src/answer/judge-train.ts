import type { Parts } from '../rules/parts.js';
import { FullReport } from '../rules/report.js';
import type { Finding } from '../rules/report.js';
import type { Context, Rule } from '../rules/rule.js';
import { RULES } from '../rules/rules.js';
import type { RuleCode } from '../rules/rules.js';
import { bareSentence, Facts } from '../rules/sentence.js';
import type { Naming } from '../rules/sentence.js';
import type { Verdict } from './answer.js';

/** Verdicts on parts that several trains of one answer have in common. */
export type SharedVerdicts = Map<string, Verdict>;

/** Every rule about one train, in the order of the rulebook, with its sentence. */
export function judgeTrain(
  parts: Parts,
  context: Context,
  name: Naming,
  shared: SharedVerdicts = new Map(),
): Verdict[] {
  return RULES.map((rule, place) => {
    const key = keyOf(place, parts);
    const known = key === null ? undefined : shared.get(key);
    if (known) return known;
    const verdict = verdictOf(rule, findingOf(rule, parts, context), name);
    if (key !== null) shared.set(key, verdict);
    return verdict;
  });
}

function findingOf({ checks }: Rule, parts: Parts, context: Context): Finding | null {
  const report = new FullReport();
  for (const check of checks) check.judge(parts, context, report);
  return report.found;
}

/** Rules that look at so many parts are about no two trains alike. */
const MOST_SEEN = 3;

/** The parts that each rule looks at; null where they are too many to recur. */
const SEEN = RULES.map(({ checks }) => {
  const seen = [...new Set(checks.flatMap(({ sees }) => sees))].filter((part) => part !== 'cellAt');
  return seen.length <= MOST_SEEN && !seen.includes('adapters') ? seen : null;
});

/** Names the rule and the items that it looks at. */
function keyOf(place: number, parts: Parts): string | null {
  const seen = SEEN[place];
  if (!seen) return null;
  let key = `${place} ${parts.cellAt}`;
  for (const part of seen) key += ` ${part === 'ends' ? endsKey(parts) : (idOf(parts, part) ?? '')}`;
  return key;
}

function endsKey({ ends }: Parts): string {
  return `${ends.upper.id} ${ends.lower.id}`;
}

function idOf(parts: Parts, part: keyof Parts): string | undefined {
  const item = parts[part];
  return typeof item === 'object' && item && 'id' in item ? item.id : undefined;
}

/** Only the rules that the train fails. */
export function failuresOf(
  parts: Parts,
  context: Context,
  name: Naming,
  rules: readonly Rule<RuleCode>[] = RULES,
): Verdict[] {
  return rules.flatMap((rule) => {
    const found = findingOf(rule, parts, context);
    return found?.outcome === 'fail' ? [verdictOf(rule, found, name)] : [];
  });
}

/** A finding with its rule and its sentence; a rule that has nothing to say passes. */
export function verdictOf(
  { code, source, sentences }: Pick<Rule<RuleCode>, 'code' | 'source' | 'sentences'>,
  finding: Finding | null,
  name: Naming,
): Verdict {
  if (!finding) return { rule: code, ...NOTHING, sentence: 'Nothing to check here.', source };
  const { reason, outcome, items, required, available, margin, unit } = finding;
  const say = sentences[reason] ?? (() => bareSentence(finding));
  const sentence = say(new Facts(finding, name));
  return { rule: code, reason, outcome, items, required, available, margin, unit, sentence, source };
}

const NOTHING: Finding = {
  reason: '',
  outcome: 'pass',
  items: [],
  required: null,
  available: null,
  margin: null,
  unit: null,
};
