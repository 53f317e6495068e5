import { LOOK_AHEADS, orderByApparentCost } from './apparent-cost.js';
import type { ScheduleModel } from './model.js';
import { freeChoice, shortestWorkMin, visitsFirst } from './order.js';
import type { Order } from './order.js';

/** A dispatch rule. */
export interface DispatchRule {
  name: string;
  order(model: ScheduleModel): Order;
}

/** Says which job comes first: the one with the lowest key. */
type Key = (model: ScheduleModel, job: number) => number;

/** The dispatch rules from which the search begins. Each job goes where it ends first. */
export const DISPATCH_RULES: readonly DispatchRule[] = [
  byKey('earliest due', (m, j) => m.due[j]!),
  ...LOOK_AHEADS.map((look) => ({
    name: `apparent tardiness cost, look-ahead ${look.urgency} and ${look.setup}`,
    order: (model: ScheduleModel) => orderByApparentCost(model, look),
  })),
  byKey('least slack', (m, j) => m.due[j]! - shortestWorkMin(m, j)),
  byKey('earliest release, then due', (m, j) => m.release[j]! * 4 + m.due[j]! / 1e4),
  byKey('weighted shortest work', (m, j) => shortestWorkMin(m, j) / (m.lateRate[j]! + 1e-6)),
  byKey('longest work', (m, j) => -shortestWorkMin(m, j)),
  byKey('fewest candidates', (m, j) => (m.candidateAt[j + 1]! - m.candidateAt[j]!) * 1e7 - shortestWorkMin(m, j)),
];

/** Sorts the jobs by a key and gives every job the candidate on which it then ends first. */
function byKey(name: string, key: Key): DispatchRule {
  return {
    name,
    order: (model) => {
      const keys = Float64Array.from({ length: model.jobs }, (_, job) => key(model, job));
      const jobs = Array.from(keys.keys()).sort((a, b) => keys[a]! - keys[b]! || a - b);
      return freeChoice(model, Int32Array.from([...visitsFirst(model), ...jobs]));
    },
  };
}
