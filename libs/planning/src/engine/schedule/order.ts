import { Builder } from './builder.js';
import type { ScheduleModel } from './model.js';

/** An order of all tasks, and the candidate of each job that goes with it. */
export interface Order {
  order: Int32Array;
  candidate: Int32Array;
  /**
   * Whether the tasks are placed exactly in this order. Otherwise a pinned job is placed before the jobs that would delay it,
   * which gives other technicians to jobs that nothing has changed for.
   */
  isExact?: boolean;
}

/** Least working time over a job's candidates, min. */
export function shortestWorkMin(model: ScheduleModel, job: number): number {
  let least = Infinity;
  for (let c = model.candidateAt[job]!; c < model.candidateAt[job + 1]!; c++) {
    least = Math.min(least, model.perSpecimen[c]! * model.specimens[c]!);
  }
  return least;
}

/** Visits by their latest end; at the head of the order each takes the first minute that its unit has. */
export function visitsFirst(model: ScheduleModel): number[] {
  return Array.from({ length: model.visits }, (_, visit) => model.jobs + visit).sort(
    (a, b) => model.visitBefore[a - model.jobs]! - model.visitBefore[b - model.jobs]!,
  );
}

/** Builds the schedule of an order. Jobs without a candidate (−1) take the one on which they end first; the answer names it. */
export function freeChoice(
  model: ScheduleModel,
  order: Int32Array,
  open = new Int32Array(model.jobs).fill(-1),
  isExact = false,
): Order {
  const builder = new Builder(model);
  builder.isExact = isExact;
  const candidate = Int32Array.from({ length: model.jobs }, (_, job) => model.candidateAt[job]!);
  builder.recorder = {
    job: (job, taken) => (candidate[job] = taken),
    unit: () => undefined,
    stint: () => undefined,
    visit: () => undefined,
    unplaced: () => undefined,
  };
  for (const task of order) builder.place(task, open);
  return { order, candidate, isExact };
}
