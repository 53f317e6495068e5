import { Builder } from './builder.js';
import type { TimetableModel } from './model.js';

/** How many states along the order are kept, to begin from when only what comes later changes. */
const STOPS = 24;

/** An order of the tasks with a candidate for each job, and what the timetable built from it costs. */
export class Tour {
  readonly tasks: number;
  readonly order: Int32Array;
  readonly place: Int32Array;
  readonly candidate: Int32Array;
  /** At which place each task was really put down: its own, or that of a later one that needs it before. */
  readonly putAt: Int32Array;
  cost = Infinity;
  evaluations = 0;
  private readonly stops: Builder[];
  private readonly step: number;
  private readonly work: Builder;

  constructor(readonly model: TimetableModel) {
    this.tasks = model.jobs + model.visits;
    this.order = Int32Array.from({ length: this.tasks }, (_, at) => at);
    this.place = Int32Array.from(this.order);
    this.putAt = new Int32Array(this.tasks);
    this.candidate = Int32Array.from({ length: model.jobs }, (_, job) => model.candidateAt[job]!);
    this.step = Math.max(1, Math.ceil(this.tasks / STOPS));
    this.stops = Array.from({ length: Math.ceil(this.tasks / this.step) }, () => new Builder(model));
    this.work = new Builder(model);
  }

  /** The cost when the order is built anew from a place on; Infinity once it is surely not below `limit`. */
  evaluate(from: number, limit: number): number {
    this.evaluations++;
    const { work, order, candidate, step } = this;
    const stop = Math.min(this.stops.length - 1, Math.floor(from / step));
    if (stop < 0) return 0;
    work.copyFrom(this.stops[stop]!);
    for (let x = stop * step; x < this.tasks; x++) {
      work.at = x;
      work.place(order[x]!, candidate);
      if (priceOf(work, this.model) >= limit) return Infinity;
    }
    return finalPrice(work, this.model);
  }

  /** Takes the order as it stands: keeps the states along it. */
  settle(from: number): void {
    const { work, order, candidate, step } = this;
    const first = Math.min(this.stops.length - 1, Math.floor(from / step));
    if (first < 0) return void (this.cost = 0);
    work.copyFrom(this.stops[first]!);
    for (let x = first * step; x < this.tasks; x++) {
      if (x % step === 0 && x > first * step) this.stops[x / step]!.copyFrom(work);
      work.at = x;
      work.place(order[x]!, candidate);
    }
    this.cost = finalPrice(work, this.model);
    this.putAt.set(work.putAt);
  }

  load(order: ArrayLike<number>, candidate: ArrayLike<number>): void {
    this.order.set(order);
    this.candidate.set(candidate);
    for (let x = 0; x < this.tasks; x++) this.place[order[x]!] = x;
    this.stops[0]?.reset();
    this.settle(0);
  }

  /** Moves what is at place `from` to place `to`; what lies between closes up. */
  shift(from: number, to: number): void {
    const { order, place } = this;
    const task = order[from]!;
    if (from < to) order.copyWithin(from, from + 1, to + 1);
    else order.copyWithin(to + 1, to, from);
    order[to] = task;
    for (let x = Math.min(from, to); x <= Math.max(from, to); x++) place[order[x]!] = x;
  }

  swap(a: number, b: number): void {
    const { order, place } = this;
    const task = order[a]!;
    order[a] = order[b]!;
    order[b] = task;
    place[order[a]!] = a;
    place[order[b]!] = b;
  }
}

/** In makespan mode the ends of all frames (root of their mean square) steer between timetables of one length. */
const ENDS_RATE = 0.1;

const priceOf = (state: Builder, model: TimetableModel): number => (model.makespan ? state.makespan + state.cost : state.cost);

function finalPrice(state: Builder, model: TimetableModel): number {
  if (!model.makespan) return state.cost;
  let ends = 0;
  for (let frame = 0; frame < model.frames; frame++) ends += state.frameFree[frame]! * state.frameFree[frame]!;
  return state.makespan + state.cost + ENDS_RATE * Math.sqrt(ends / model.frames);
}
