import type { RuleCode, Verdict } from './answer.js';
import type { Parts } from './parts.js';
import { RULES } from './rules/rules.js';
import { worse } from './rules/rule.js';
import type { Context, Finding, Rule } from './rules/rule.js';
import { sentenceOf } from './words.js';
import type { Naming } from './words.js';

/** Every rule about one train, in the order of the rulebook, with its sentence. */
export function judgeTrain(parts: Parts, context: Context, name: Naming): Verdict[] {
  return RULES.map(({ code, source, checks }) => {
    let found: Finding | null = null;
    for (const { judge } of checks) found = worse(found, judge(parts, context));
    return verdictOf(code, source, found, name);
  });
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
