import type { Budget } from '../budget.js';
import { AnnealingSchedule } from './annealing-schedule.js';
import type { Random } from '../random.js';
import type { ScheduleModel } from './model.js';
import type { Order } from './order.js';
import { DISPATCH_RULES } from './dispatch-rules.js';
import { SplitFrames } from './split-frames.js';
import { Schedule } from './schedule.js';

/** Where the makespan counts, one move in so many redistributes the tasks of two frames. */
const SPLIT_EVERY = 10;
/** Of so many random tasks, the one whose lateness costs most is moved. */
const DRAWS = 8;
/** A task moves so many places at most, or to about the third task of its frame before or behind it where that is farther. */
const LEAST_REACH = 128;
/** A place nearby is at most 2 to the power of this off. */
const FARTHEST_NEAR = 6;
/** The dispatch rules may take this share of the time before the local search begins. */
const SHARE_OF_RULES = 0.4;

/**
 * Simulated annealing over the order of the tasks and the candidate of each job.
 *
 * @param known the order of the published plan, which is kept unless another one gains more than what moving a job costs
 */
export function searchSchedules(
  model: ScheduleModel,
  budget: Budget,
  random: Random,
  known: Order | null,
  onBetter: (order: Order, cost: number, evaluations: number) => void,
): Order {
  const schedule = new Schedule(model);
  let best: Order = { order: schedule.order.slice(), candidate: schedule.candidate.slice() };
  let least = Infinity;
  const better = (): void => {
    if (schedule.cost >= least - 1e-9) return;
    least = schedule.cost;
    best = { order: schedule.order.slice(), candidate: schedule.candidate.slice(), isExact: schedule.isExact };
    onBetter(best, least, schedule.evaluations);
  };
  if (known) {
    schedule.load(known);
    better();
  }
  const published = least;
  for (const rule of DISPATCH_RULES) {
    if (least < Infinity && (budget.isSpent() || budget.spentShare() > SHARE_OF_RULES)) break;
    schedule.load(rule.order(model));
    better();
  }
  schedule.load({ ...best, isExact: false });
  const annealing = new AnnealingSchedule(schedule, budget);
  const split = model.makespan && model.frames > 1 ? new SplitFrames(schedule) : null;
  while (schedule.tasks > 1 && least > 0 && !budget.isSpent()) {
    budget.rounds++;
    const allowance = annealing.allowance(random);
    const isAccepted =
      split && random.below(SPLIT_EVERY) === 0
        ? splitStep(schedule, split, random, allowance)
        : step(schedule, random, allowance);
    if (isAccepted) better();
    if (annealing.isPhaseOver()) {
      annealing.nextPhase(least);
      schedule.load({ ...best, isExact: false });
      perturb(schedule, random, annealing.perturbations);
    }
  }
  budget.evaluations = schedule.evaluations;
  return known && published - least <= model.movedFrameCost ? known : best;
}

/** Redistributes the tasks of two frames. @returns whether that was accepted */
function splitStep(schedule: Schedule, split: SplitFrames, random: Random, allowance: number): boolean {
  const task = split.redistribute(random);
  if (task < 0) return false;
  const first = schedule.putAt[task]!;
  const limit = schedule.cost + allowance;
  if (schedule.evaluate(first, limit, -1, -1) < limit) return settled(schedule, first);
  split.undo();
  return false;
}

/** One random move. @returns whether it was accepted */
function step(schedule: Schedule, random: Random, allowance: number): boolean {
  const { model, order, place, candidate } = schedule;
  const kind = random.below(10);
  const isLate = !model.makespan && random.below(2) === 0;
  const from = isLate ? lateOne(schedule, random) : random.below(schedule.tasks);
  const task = order[from]!;
  const limit = schedule.cost + allowance;
  if (kind < 4 && task < model.jobs && !model.makespan && random.below(2) === 0)
    return tryAnyFrame(schedule, from, placeFor(schedule, random, from, isLate), limit);
  if (kind < 4) return tryShift(schedule, from, besides(schedule, random, task, -1), limit);
  if (kind < 6) {
    const to = besides(schedule, random, task, -1);
    if (to === from) return false;
    return trySwap(schedule, from, to, limit);
  }
  if (task >= model.jobs) return tryShift(schedule, from, within(schedule, random, task), limit);
  const many = model.candidateAt[task + 1]! - model.candidateAt[task]!;
  if (many < 2) return tryShift(schedule, from, within(schedule, random, task), limit);
  const was = candidate[task]!;
  const is = model.candidateAt[task]! + random.below(many);
  if (is === was) return false;
  candidate[task] = is;
  const to = kind < 7 ? from : besides(schedule, random, task, model.candidateFrame[is]!);
  if (kind === 9 && exchangeFrames(schedule, from, to, was, limit)) return true;
  if (tryShift(schedule, from, to, limit, true)) return true;
  candidate[place[task] === from ? task : order[from]!] = was;
  return false;
}

/** Moves a few random tasks, whatever that costs, so that the next phase begins elsewhere. */
function perturb(schedule: Schedule, random: Random, times: number): void {
  const { model, candidate, order } = schedule;
  for (let n = 0; n < Math.min(times, schedule.tasks); n++) {
    const from = random.below(schedule.tasks);
    const task = order[from]!;
    if (task < model.jobs)
      candidate[task] =
        model.candidateAt[task]! + random.below(model.candidateAt[task + 1]! - model.candidateAt[task]!);
    schedule.shift(from, random.below(schedule.tasks));
  }
  if (times > 0) schedule.settle(0);
}

/** Among a few random tasks the place of the one whose lateness costs most. */
function lateOne(schedule: Schedule, random: Random): number {
  const { model, order, endOf } = schedule;
  let place = random.below(schedule.tasks);
  let most = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    const at = random.below(schedule.tasks);
    const task = order[at]!;
    const cost = task < model.jobs ? (endOf[task]! - model.due[task]!) * model.lateRate[task]! : 0;
    if (cost > most) {
      most = cost;
      place = at;
    }
  }
  return place;
}

/** The task at `to` takes the frame that the one at `from` leaves, and both change places. */
function exchangeFrames(schedule: Schedule, from: number, to: number, left: number, limit: number): boolean {
  const { model, order, candidate } = schedule;
  const other = order[to]!;
  if (from === to || other >= model.jobs) return false;
  for (let c = model.candidateAt[other]!; c < model.candidateAt[other + 1]!; c++) {
    if (model.candidateFrame[c] !== model.candidateFrame[left]) continue;
    const had = candidate[other]!;
    candidate[other] = c;
    if (trySwap(schedule, from, to, limit)) return true;
    candidate[other] = had;
    return false;
  }
  return false;
}

function tryShift(schedule: Schedule, from: number, to: number, limit: number, changed = false): boolean {
  if (from === to && !changed) return false;
  const task = schedule.order[from]!;
  const first = Math.min(from, to, schedule.putAt[task]!);
  schedule.shift(from, to);
  if (schedule.evaluate(first, limit, task, task, Math.max(from, to)) < limit) {
    if (schedule.candidate[task]! < 0) schedule.candidate[task] = schedule.chosenFor(task);
    return settled(schedule, first);
  }
  schedule.shift(to, from);
  return false;
}

/** A place nearby, beside a task of the same frame, or anywhere; where the task is late, rather before it. */
function placeFor(schedule: Schedule, random: Random, from: number, isLate: boolean): number {
  if (random.below(2) === 0) return near(schedule, random, from);
  if (random.below(2) === 0) return besides(schedule, random, schedule.order[from]!, -1);
  return random.below(isLate ? from + 1 : schedule.tasks);
}

/** Rather before than behind, and rather a few places off than many. */
function near({ tasks }: Schedule, random: Random, from: number): number {
  const by = 1 + random.below(2 << random.below(FARTHEST_NEAR));
  const to = random.below(3) === 0 ? from + by : from - by;
  return to < 0 || to >= tasks ? random.below(tasks) : to;
}

/** Another place for a job, on the candidate on which it then ends first. */
function tryAnyFrame(schedule: Schedule, from: number, to: number, limit: number): boolean {
  const { order, candidate } = schedule;
  const job = order[from]!;
  const was = candidate[job]!;
  candidate[job] = -1;
  if (tryShift(schedule, from, to, limit, true)) return true;
  candidate[job] = was;
  return false;
}

function trySwap(schedule: Schedule, a: number, b: number, limit: number): boolean {
  const { order, putAt } = schedule;
  const first = Math.min(a, b, putAt[order[a]!]!, putAt[order[b]!]!);
  schedule.swap(a, b);
  if (schedule.evaluate(first, limit, order[a]!, order[b]!, Math.max(a, b)) < limit) return settled(schedule, first);
  schedule.swap(a, b);
  return false;
}

function settled(schedule: Schedule, from: number): boolean {
  schedule.settle(from);
  return true;
}

/** The place of a random task on a frame (−1: the task's own), so that a move changes what follows what there. */
function besides(schedule: Schedule, random: Random, task: number, frame: number): number {
  const { model, order, candidate } = schedule;
  if (task >= model.jobs) return random.below(schedule.tasks);
  const on = frame < 0 ? model.candidateFrame[candidate[task]!]! : frame;
  for (let tries = 0; tries < 3 * model.frames; tries++) {
    const to = within(schedule, random, task);
    const other = order[to]!;
    if (other < model.jobs && other !== task && model.candidateFrame[candidate[other]!] === on) return to;
  }
  return within(schedule, random, task);
}

/** A random place that is not far off, so that a try rebuilds a part of the schedule and not all of it. */
function within({ tasks, place, model }: Schedule, random: Random, task: number): number {
  const reach = Math.max(LEAST_REACH, 3 * model.frames);
  const first = Math.max(0, place[task]! - reach);
  const last = Math.min(tasks - 1, place[task]! + reach);
  return first + random.below(last - first + 1);
}
