import type { RuleCode, Verdict } from './answer.js';
import type { Parts } from './parts.js';
import { RULES } from './rules/rules.js';
import { worst } from './rules/rule.js';
import type { Context, Finding } from './rules/rule.js';
import { sentenceOf } from './words.js';
import type { Naming } from './words.js';

/** Every rule about one train, in the order of the rulebook, with its sentence. */
export function judgeTrain(parts: Parts, context: Context, name: Naming): Verdict[] {
  return RULES.map(({ code, source, checks }) =>
    verdictOf(code, source, worst(checks.map((check) => check.judge(parts, context))), name),
  );
}

/** A finding with its rule and its sentence; a rule that has nothing to say passes. */
export function verdictOf(rule: RuleCode, source: string, finding: Finding | null, name: Naming): Verdict {
  if (!finding)
    return {
      rule,
      reason: '',
      outcome: 'pass',
      items: [],
      required: null,
      available: null,
      margin: null,
      unit: null,
      sentence: NOTHING,
      source,
    };
  const { outcome, reason, items, required, available, margin, unit } = finding;
  return {
    rule,
    reason,
    outcome,
    items,
    required,
    available,
    margin,
    unit,
    sentence: sentenceOf(finding, name),
    source,
  };
}

const NOTHING = 'Nothing to check here.';
