import type { Plan } from '../plan.js';
import type { Problem } from '../problem.js';
import { caseOf } from './breach.js';
import type { Breach, Rule } from './breach.js';
import { changeoverTime } from './rules/changeover-time.js';
import { costAsStated } from './rules/cost-as-stated.js';
import { eligibleTrain } from './rules/eligible-train.js';
import { everythingAccountedFor } from './rules/everything-accounted-for.js';
import { frameOpen } from './rules/frame-open.js';
import { insideHorizon } from './rules/inside-horizon.js';
import { offForMaintenance } from './rules/off-for-maintenance.js';
import { oneTestAtATime } from './rules/one-test-at-a-time.js';
import { pinsKept } from './rules/pins-kept.js';
import { releasedAndAfter } from './rules/released-and-after.js';
import { somebodyThere } from './rules/somebody-there.js';
import { unitInForce } from './rules/unit-in-force.js';
import { unitInOnePlace } from './rules/unit-in-one-place.js';
import { visitsMade } from './rules/visits-made.js';
import { workComplete } from './rules/work-complete.js';
import { worthwhileStart } from './rules/worthwhile-start.js';

/** The lab's own rulebook for plans. */
export const PLAN_RULES: readonly Rule[] = [
  everythingAccountedFor,
  eligibleTrain,
  oneTestAtATime,
  unitInOnePlace,
  unitInForce,
  frameOpen,
  offForMaintenance,
  changeoverTime,
  workComplete,
  worthwhileStart,
  releasedAndAfter,
  somebodyThere,
  pinsKept,
  visitsMade,
  insideHorizon,
  costAsStated,
];

/** Whatever a plan breaks, worked out from problem and plan alone; an empty list means that it may be published. */
export function judgePlan(problem: Problem, plan: Plan): Breach[] {
  const one = caseOf(problem, plan);
  return PLAN_RULES.flatMap((rule) => rule(one));
}
