import type { SequenceModel } from './model.js';

/** Urgency and setup weight of the apparent-tardiness-cost rule (Lee, Bhaskaran & Pinedo 1997, IIE Transactions 29). */
export interface DispatchRule {
  /** Look-ahead for due dates, in mean working times. */
  urgency: number;
  /** Look-ahead for setups, in mean setups. */
  setup: number;
}

/** The two parameters over which the rule is tried. */
export const RULE_GRID: readonly DispatchRule[] = [0.2, 0.6, 1.2, 2.4, 5].flatMap((urgency) =>
  [0.1, 0.3, 0.8, 2].map((setup) => ({ urgency, setup })),
);

/** Builds the sequences job by job: the machine that is free first takes the job with the highest index. */
export function dispatch(
  model: SequenceModel,
  rule: DispatchRule,
  { meanWork, meanSetup } = meansOf(model),
): number[][] {
  const machines: number[][] = Array.from({ length: model.machines }, () => []);
  const free = new Int32Array(model.machines);
  const closed = new Uint8Array(model.machines);
  const open = Array.from({ length: model.jobs }, (_, job) => job);
  while (open.length > 0) {
    const machine = earliest(free, closed);
    const at = bestFor(
      model,
      rule,
      machine,
      free[machine]!,
      machines[machine]!.at(-1) ?? model.jobs,
      open,
      meanWork,
      meanSetup,
    );
    if (at < 0) {
      closed[machine] = 1;
      continue;
    }
    const job = open[at]!;
    open[at] = open[open.length - 1]!;
    open.pop();
    free[machine] =
      readyOn(model, machine, machines[machine]!.at(-1) ?? model.jobs, job, free[machine]!) +
      workOn(model, machine, job);
    machines[machine]!.push(job);
  }
  return machines;
}

const workOn = (model: SequenceModel, machine: number, job: number): number =>
  model.work[machine * (model.jobs + 1) + job]!;

const setupOn = (model: SequenceModel, machine: number, last: number, job: number): number =>
  model.setup[model.setupAt[machine]! + model.familyOf[last]! * model.families + model.familyOf[job]!]!;

const readyOn = (model: SequenceModel, machine: number, last: number, job: number, freeMin: number): number =>
  Math.max(freeMin + setupOn(model, machine, last, job), model.release[job]!);

function earliest(free: Int32Array, closed: Uint8Array): number {
  let best = -1;
  for (let machine = 0; machine < free.length; machine++) {
    if (!closed[machine] && (best < 0 || free[machine]! < free[best]!)) best = machine;
  }
  return best;
}

function bestFor(
  model: SequenceModel,
  rule: DispatchRule,
  machine: number,
  freeMin: number,
  last: number,
  open: readonly number[],
  meanWork: number,
  meanSetup: number,
): number {
  let best = -1;
  let most = -Infinity;
  for (let at = 0; at < open.length; at++) {
    const job = open[at]!;
    const work = workOn(model, machine, job);
    if (work < 0) continue;
    const wait = readyOn(model, machine, last, job, freeMin) - freeMin;
    const slack = Math.max(0, model.due[job]! - work - freeMin);
    // In logarithms, so that a far due date does not underflow to a tie.
    const index =
      Math.log((model.lateRate[job]! + 1e-6) / Math.max(1, work)) -
      slack / (rule.urgency * meanWork) -
      wait / (rule.setup * meanSetup);
    if (index > most) {
      most = index;
      best = at;
    }
  }
  return best;
}

/** What the rule measures by: mean working and changeover time, min. */
export function meansOf(model: SequenceModel): { meanWork: number; meanSetup: number } {
  const works = model.work.filter((min) => min > 0);
  const setups = model.setup.filter((min) => min > 0);
  const mean = (all: Int32Array): number =>
    Math.max(1, all.reduce((sum, min) => sum + min, 0) / Math.max(1, all.length));
  return { meanWork: mean(works), meanSetup: mean(setups) };
}
