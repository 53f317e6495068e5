import type { ReviewBody } from '#libs/contract/src/index.js';
import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';

/** The points of ISO/IEC 17025:2017 7.1.1, 7.1.3 and 7.4 that a review settles, in words. */
const POINTS = {
  methodAgreed: 'The method and its version are agreed with the requester (7.1.1).',
  capabilityShown: 'The lab has the equipment, the people and the time (7.1.1).',
  specimensAgreed: 'Number, state and marking of the specimens are agreed (7.1.1, 7.4).',
  disposalAgreed: 'What happens to the tested pieces is agreed (7.4).',
  decisionRuleAgreed: 'The decision rule of the statement of conformity is agreed (7.1.3).',
} satisfies Partial<Record<keyof ReviewBody, string>>;

/** The points that are not settled; the decision rule counts only where conformity is to be stated. */
export function reviewProblems(review: ReviewBody, statesConformity: boolean): FieldProblem[] {
  return (Object.keys(POINTS) as (keyof typeof POINTS)[])
    .filter((point) => review[point] !== true && (point !== 'decisionRuleAgreed' || statesConformity))
    .map((field) => fieldProblem({ field, found: review[field], allowed: 'settled (true)', unit: '' }, POINTS[field]));
}
