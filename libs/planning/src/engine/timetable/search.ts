import type { Budget } from '../budget.js';
import type { Random } from '../random.js';
import type { TimetableModel } from './model.js';
import type { Order } from './orders.js';
import { ORDER_RULES } from './orders.js';
import { SplitFrames } from './split-frames.js';
import { Tour } from './tour.js';

// Taken out once: looking them up each time is slow inside the context that specs run in.
const { floor, log, max, min } = Math;

/** Where the length counts, every so many moves two frames are dealt out anew. */
const SPLIT_EVERY = 10;
/** How many tasks are drawn to find a late one. */
const DRAWS = 8;
/** The dispatch rules may take this share of the time before the search begins. */
const SHARE_OF_RULES = 0.4;

/**
 * Improves orders by moves of single tasks: worse ones are taken while it is warm.
 *
 * @param known an order to begin from when it is better than every rule's, e.g. that of the plan in force
 */
export function searchTimetables(
  model: TimetableModel,
  budget: Budget,
  random: Random,
  known: Order | null,
  onBetter: (order: Order, cost: number, evaluations: number) => void,
): Order {
  const tour = new Tour(model);
  let best = { order: tour.order.slice(), candidate: tour.candidate.slice() };
  let least = Infinity;
  const better = (): void => {
    if (tour.cost >= least - 1e-9) return;
    least = tour.cost;
    best = { order: tour.order.slice(), candidate: tour.candidate.slice() };
    onBetter(best, least, tour.evaluations);
  };
  if (known) {
    tour.load(known.order, known.candidate);
    better();
  }
  for (const rule of ORDER_RULES) {
    if (least < Infinity && (budget.isSpent() || budget.spentShare() > SHARE_OF_RULES)) break;
    const { order, candidate } = rule.order(model);
    tour.load(order, candidate);
    better();
  }
  tour.load(best.order, best.candidate);
  const heat = new Heat(tour);
  const split = model.makespan && model.frames > 1 ? new SplitFrames(tour) : null;
  while (tour.tasks > 1 && least > 0 && !budget.isSpent()) {
    budget.rounds++;
    const allowance = heat.allowance(random);
    const isTaken =
      split && random.below(SPLIT_EVERY) === 0
        ? splitStep(tour, split, random, allowance)
        : step(tour, random, allowance);
    if (isTaken) better();
    if (heat.isOver()) {
      heat.again(least);
      tour.load(best.order, best.candidate);
      shake(tour, random, heat.strength);
    }
  }
  budget.evaluations = tour.evaluations;
  return best;
}

/** Deals two frames out anew; @returns whether that was taken. */
function splitStep(tour: Tour, split: SplitFrames, random: Random, allowance: number): boolean {
  const task = split.deal(random);
  if (task < 0) return false;
  const first = tour.putAt[task]!;
  const limit = tour.cost + allowance;
  if (tour.evaluate(first, limit, -1, -1) < limit) return settled(tour, first);
  split.undo();
  return false;
}

/** One random move; @returns whether it was taken. */
function step(tour: Tour, random: Random, allowance: number): boolean {
  const { model, order, place, candidate } = tour;
  const kind = random.below(10);
  const isLate = !model.makespan && random.below(2) === 0;
  const from = isLate ? lateOne(tour, random) : random.below(tour.tasks);
  const task = order[from]!;
  const limit = tour.cost + allowance;
  if (kind < 4) return tryShift(tour, from, besides(tour, random, task, -1), limit);
  if (kind < 6) {
    const to = besides(tour, random, task, -1);
    if (to === from) return false;
    return trySwap(tour, from, to, limit);
  }
  if (task >= model.jobs) return tryShift(tour, from, random.below(tour.tasks), limit);
  const many = model.candidateAt[task + 1]! - model.candidateAt[task]!;
  if (many < 2) return tryShift(tour, from, random.below(tour.tasks), limit);
  const was = candidate[task]!;
  const is = model.candidateAt[task]! + random.below(many);
  if (is === was) return false;
  candidate[task] = is;
  const to = kind < 7 ? from : besides(tour, random, task, model.candidateFrame[is]!);
  if (kind === 9 && exchangeFrames(tour, from, to, was, limit)) return true;
  if (tryShift(tour, from, to, limit, true)) return true;
  candidate[place[task] === from ? task : order[from]!] = was;
  return false;
}

/** Moves a few random tasks whatever it costs, so that the next phase begins elsewhere. */
function shake(tour: Tour, random: Random, times: number): void {
  const { model, candidate, order } = tour;
  for (let n = 0; n < min(times, tour.tasks); n++) {
    const from = random.below(tour.tasks);
    const task = order[from]!;
    if (task < model.jobs)
      candidate[task] =
        model.candidateAt[task]! + random.below(model.candidateAt[task + 1]! - model.candidateAt[task]!);
    tour.shift(from, random.below(tour.tasks));
  }
  if (times > 0) tour.settle(0);
}

/** Among a few random tasks the place of the one whose lateness costs most. */
function lateOne(tour: Tour, random: Random): number {
  const { model, order, endOf } = tour;
  let place = random.below(tour.tasks);
  let most = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    const at = random.below(tour.tasks);
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
function exchangeFrames(tour: Tour, from: number, to: number, left: number, limit: number): boolean {
  const { model, order, candidate } = tour;
  const other = order[to]!;
  if (from === to || other >= model.jobs) return false;
  for (let c = model.candidateAt[other]!; c < model.candidateAt[other + 1]!; c++) {
    if (model.candidateFrame[c] !== model.candidateFrame[left]) continue;
    const had = candidate[other]!;
    candidate[other] = c;
    if (trySwap(tour, from, to, limit)) return true;
    candidate[other] = had;
    return false;
  }
  return false;
}

function tryShift(tour: Tour, from: number, to: number, limit: number, changed = false): boolean {
  if (from === to && !changed) return false;
  const task = tour.order[from]!;
  const first = min(from, to, tour.putAt[task]!);
  tour.shift(from, to);
  if (tour.evaluate(first, limit, task, task) < limit) return settled(tour, first);
  tour.shift(to, from);
  return false;
}

function trySwap(tour: Tour, a: number, b: number, limit: number): boolean {
  const { order, putAt } = tour;
  const first = min(a, b, putAt[order[a]!]!, putAt[order[b]!]!);
  tour.swap(a, b);
  if (tour.evaluate(first, limit, order[a]!, order[b]!) < limit) return settled(tour, first);
  tour.swap(a, b);
  return false;
}

function settled(tour: Tour, from: number): boolean {
  tour.settle(from);
  return true;
}

/** The place of a random task on a frame (−1: the task's own), so that a move changes what follows what there. */
function besides(tour: Tour, random: Random, task: number, frame: number): number {
  const { model, order, candidate } = tour;
  if (task >= model.jobs) return random.below(tour.tasks);
  const on = frame < 0 ? model.candidateFrame[candidate[task]!]! : frame;
  for (let tries = 0; tries < 3 * model.frames; tries++) {
    const to = random.below(tour.tasks);
    const other = order[to]!;
    if (other < model.jobs && other !== task && model.candidateFrame[candidate[other]!] === on) return to;
  }
  return random.below(tour.tasks);
}

/**
 * How warm it is at the start of a phase, in mean costs of a task. Lengths are warmer: there the cost is one job's end, and
 * moves change it by whole jobs.
 */
const WARMTH = 0.03;
const WARMTH_OF_LENGTH = 0.1;
/** How much warmer it gets at most where nothing better is found. */
const MOST_FACTOR = 256;
/** How much longer each phase is than the one before. */
const GROWTH = 1.4;
/** Rounds of the first phase, per task. */
const FIRST_PHASE = 400;

/** How much worse a move may be; cools over a phase, and each phase is longer than the last. */
class Heat {
  private round = 0;
  private phase: number;
  private warm: number;
  /** Doubled after each phase that found nothing better. */
  private factor = 1;
  private least = Infinity;

  constructor(private readonly tour: Tour) {
    this.phase = FIRST_PHASE * tour.tasks;
    this.warm = this.warmest();
  }

  allowance(random: Random): number {
    const warm = this.warm * max(0, 1 - this.round++ / this.phase) ** 3;
    return -warm * log(random.unit() + 1e-12) + 1e-9;
  }

  isOver(): boolean {
    return this.round >= this.phase;
  }

  /** How many tasks to shake: none after a phase that found something better. */
  get strength(): number {
    return this.factor - 1;
  }

  again(least: number): void {
    this.factor = least < this.least - 1e-9 ? 1 : min(MOST_FACTOR, 2 * this.factor);
    this.least = least;
    this.round = 0;
    this.phase = floor(this.phase * GROWTH);
    this.warm = this.warmest();
  }

  private warmest(): number {
    return (
      (this.factor * (this.tour.model.makespan ? WARMTH_OF_LENGTH : WARMTH) * this.tour.cost) / max(1, this.tour.tasks)
    );
  }
}
