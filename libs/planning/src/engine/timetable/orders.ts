import { LOOK_AHEADS, orderByApparentCost } from './apparent-cost.js';
import { Builder } from './builder.js';
import type { TimetableModel } from './model.js';

/** An order of all tasks, and the candidate of each job that goes with it. */
export interface Order {
  order: Int32Array;
  candidate: Int32Array;
}

/** A dispatch rule. */
export interface OrderRule {
  name: string;
  order(model: TimetableModel): Order;
}

/** A way to say which task comes first: the lowest key. */
type Key = (model: TimetableModel, job: number) => number;

/** The dispatch rules that the search begins from; each job goes where it ends first. */
export const ORDER_RULES: readonly OrderRule[] = [
  byKey('earliest due', (m, j) => m.due[j]!),
  ...LOOK_AHEADS.map((look) => ({
    name: `apparent tardiness cost, look-ahead ${look.urgency} and ${look.setup}`,
    order: (model: TimetableModel) => orderByApparentCost(model, look),
  })),
  byKey('least slack', (m, j) => m.due[j]! - shortest(m, j)),
  byKey('earliest release, then due', (m, j) => m.release[j]! * 4 + m.due[j]! / 1e4),
  byKey('weighted shortest work', (m, j) => shortest(m, j) / (m.lateRate[j]! + 1e-6)),
  byKey('longest work', (m, j) => -shortest(m, j)),
  byKey('fewest candidates', (m, j) => (m.candidateAt[j + 1]! - m.candidateAt[j]!) * 1e7 - shortest(m, j)),
];

/** Least working time over a job's candidates, min. */
export function shortest(model: TimetableModel, job: number): number {
  let least = Infinity;
  for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++) {
    least = Math.min(least, model.perSpecimen[c]! * model.specimens[c]!);
  }
  return least;
}

/** The tasks by a key, with every job on the candidate on which it then ends first. */
function byKey(name: string, key: Key): OrderRule {
  return {
    name,
    order: (model) => {
      const keys = Float64Array.from({ length: model.jobs }, (_, job) => key(model, job));
      const jobs = Array.from(keys.keys()).sort((a, b) => keys[a]! - keys[b]! || a - b);
      return freeChoice(model, Int32Array.from([...visitsFirst(model), ...jobs]));
    },
  };
}

/** Visits by their latest end; at the head of the order each takes the first minute that its unit has. */
export function visitsFirst(model: TimetableModel): number[] {
  return Array.from({ length: model.visits }, (_, visit) => model.jobs + visit).sort(
    (a, b) => model.visitBefore[a - model.jobs]! - model.visitBefore[b - model.jobs]!,
  );
}

/** Lets the jobs of an order that are free to choose (−1) take the candidate on which they end first, and notes which they took. */
export function freeChoice(
  model: TimetableModel,
  order: Int32Array,
  open = new Int32Array(model.jobs).fill(-1),
): Order {
  const builder = new Builder(model);
  const candidate = Int32Array.from({ length: model.jobs }, (_, job) => model.candidateAt[job]!);
  builder.recorder = {
    job: (job, taken) => (candidate[job] = taken),
    unit: () => undefined,
    stint: () => undefined,
    visit: () => undefined,
    unplaced: () => undefined,
  };
  for (const task of order) builder.place(task, open);
  return { order, candidate };
}
