import type { RuleCode, Verdict } from './answer.js';
import type { Parts } from './parts.js';
import { RULES } from './rules/rules.js';
import { worse } from './rules/rule.js';
import type { Context, Finding, Rule } from './rules/rule.js';
import { sentenceOf } from './words.js';
import type { Naming } from './words.js';

/** What rules said about parts that several trains of one answer have in common. */
export type Told = Map<string, Verdict>;

/** Every rule about one train, in the order of the rulebook, with its sentence. */
export function judgeTrain(parts: Parts, context: Context, name: Naming, told: Told = new Map()): Verdict[] {
  return RULES.map((rule, place) => {
    const key = keyOf(place, parts);
    const known = key === null ? undefined : told.get(key);
    if (known) return known;
    const verdict = judgedBy(rule, parts, context, name);
    if (key !== null) told.set(key, verdict);
    return verdict;
  });
}

function judgedBy({ code, source, checks }: Rule, parts: Parts, context: Context, name: Naming): Verdict {
  let found: Finding | null = null;
  for (const { judge } of checks) found = worse(found, judge(parts, context));
  return verdictOf(code, source, found, name);
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
export function failuresOf(parts: Parts, context: Context, name: Naming, rules: readonly Rule[] = RULES): Verdict[] {
  const failures: Verdict[] = [];
  for (const { code, source, checks } of rules) {
    let found: Finding | null = null;
    for (const { judge, passes } of checks) if (!passes?.(parts, context)) found = worse(found, judge(parts, context));
    if (found?.outcome === 'fail') failures.push(verdictOf(code, source, found, name));
  }
  return failures;
}

/** A finding with its rule and its sentence; a rule that has nothing to say passes. */
export function verdictOf(rule: RuleCode, source: string, finding: Finding | null, name: Naming): Verdict {
  const { outcome, reason, items, required, available, margin, unit } = finding ?? NOTHING;
  const sentence = finding ? sentenceOf(finding, name) : 'Nothing to check here.';
  return { rule, reason, outcome, items, required, available, margin, unit, sentence, source };
}

const NOTHING: Finding = {
  outcome: 'pass',
  reason: '',
  items: [],
  required: null,
  available: null,
  margin: null,
  unit: null,
};
