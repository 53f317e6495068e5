import { Builder } from './builder.js';
import type { TimetableModel } from './model.js';

/** An order of all tasks, and the candidate of each job that goes with it. */
export interface Order {
  order: Int32Array;
  candidate: Int32Array;
}

/** A way to say which task comes first: the lowest key. */
export interface OrderRule {
  name: string;
  key(model: TimetableModel, job: number): number;
}

/** The dispatch rules that the search begins from; each job goes where it ends first. */
export const ORDER_RULES: readonly OrderRule[] = [
  { name: 'earliest due', key: (m, j) => m.due[j]! },
  { name: 'earliest release, then due', key: (m, j) => m.release[j]! * 4 + m.due[j]! / 1e4 },
  { name: 'least slack', key: (m, j) => m.due[j]! - shortest(m, j) },
  { name: 'weighted shortest work', key: (m, j) => shortest(m, j) / (m.lateRate[j]! + 1e-6) },
  { name: 'longest work', key: (m, j) => -shortest(m, j) },
  { name: 'fewest candidates', key: (m, j) => (m.candidateAt[j + 1]! - m.candidateAt[j]!) * 1e7 - shortest(m, j) },
];

/** Least working time over a job's candidates, min. */
export function shortest(model: TimetableModel, job: number): number {
  let least = Infinity;
  for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++) {
    least = Math.min(least, model.perSpecimen[c]! * model.specimens[c]!);
  }
  return least;
}

/** The order of a rule, with every job on the candidate on which it then ends first. */
export function orderBy(model: TimetableModel, rule: OrderRule): Order {
  const keys = Float64Array.from({ length: model.jobs }, (_, job) => rule.key(model, job));
  const order = Int32Array.from([...visitsFirst(model), ...Array.from(keys.keys()).sort((a, b) => keys[a]! - keys[b]! || a - b)]);
  return freeChoice(model, order);
}

/** Visits by their latest end; at the head of the order each takes the first minute that its unit has. */
const visitsFirst = (model: TimetableModel): number[] =>
  Array.from({ length: model.visits }, (_, visit) => model.jobs + visit).sort(
    (a, b) => model.visitBefore[a - model.jobs]! - model.visitBefore[b - model.jobs]!,
  );

/** Lets the jobs of an order that are free to choose (−1) take the candidate on which they end first, and notes which they took. */
export function freeChoice(model: TimetableModel, order: Int32Array, open = new Int32Array(model.jobs).fill(-1)): Order {
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
