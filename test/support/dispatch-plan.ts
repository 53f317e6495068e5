import { DISPATCH_RULES } from '#libs/planning/src/engine/schedule/dispatch-rules.js';
import { compile } from '#libs/planning/src/engine/schedule/model-of.js';
import { planOf } from '#libs/planning/src/engine/schedule/plan-of.js';
import type { Plan, Problem } from '#libs/planning/src/index.js';

/** Names of the dispatch rules from which the search begins. */
export const RULE_NAMES: readonly string[] = DISPATCH_RULES.map(({ name }) => name);

/** The plan of one dispatch rule without any search: what a search has to beat. */
export function dispatchPlan(problem: Problem, name = RULE_NAMES[0]!): Plan {
  const compiled = compile(problem);
  const rule = DISPATCH_RULES.find((one) => one.name === name)!;
  return planOf(problem, compiled, rule.order(compiled.model));
}
