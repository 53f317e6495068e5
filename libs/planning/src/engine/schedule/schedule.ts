import { Builder } from './builder.js';
import { ChangedResources } from './changed-resources.js';
import type { ScheduleModel } from './model.js';
import type { Order } from './order.js';
import { Placements } from './placements.js';

/** So many partial schedules along the order are kept, from which an altered order is built. */
const STOPS = 60;
/** So many tasks behind the last that was touched tell, at least, whether a move pays. */
const TELLING = 8;

/** An order of the tasks with a candidate for each job, and the schedule that is built from it. */
export class Schedule {
  readonly tasks: number;
  readonly order: Int32Array;
  readonly place: Int32Array;
  readonly candidate: Int32Array;
  /** At which place each task was really placed: its own, or that of an earlier one that needs it first. */
  readonly putAt: Int32Array;
  /** End of each task, min. */
  readonly endOf: Int32Array;
  /** End of the last task of each frame, min. */
  readonly frameEnd: Int32Array;
  cost = Infinity;
  /** As in the order that was loaded. */
  isExact = false;
  evaluations = 0;
  private readonly stops: Builder[];
  private readonly step: number;
  private readonly work: Builder;
  private readonly changed: ChangedResources;
  /** Where everything lies. */
  private readonly settled: Placements;
  /** Whether a job's place depends on its frame and pools alone: there is no roster, no pin and no precedence. */
  private readonly isSeparable: boolean;
  /** What the schedule costs up to each place of the order, that one included. */
  private readonly costUpTo: Float64Array;

  constructor(readonly model: ScheduleModel) {
    this.tasks = model.jobs + model.visits;
    this.order = Int32Array.from({ length: this.tasks }, (_, at) => at);
    this.place = Int32Array.from(this.order);
    this.putAt = new Int32Array(this.tasks);
    this.endOf = new Int32Array(this.tasks);
    this.frameEnd = new Int32Array(model.frames);
    this.candidate = Int32Array.from({ length: model.jobs }, (_, job) => model.candidateAt[job]!);
    this.step = Math.max(1, Math.ceil(this.tasks / STOPS));
    this.stops = Array.from({ length: Math.ceil(this.tasks / this.step) }, () => new Builder(model));
    this.work = new Builder(model);
    this.changed = new ChangedResources(model);
    this.settled = new Placements(model);
    this.costUpTo = new Float64Array(this.tasks);
    this.isSeparable = model.technicians === 0 && model.pinned.length === 0 && model.after.length === 0;
  }

  /**
   * The cost when the order is built anew from a place on; Infinity once it is surely not below `limit`, or hardly: soon after the
   * last place that was touched, what a move has gained or lost so far says enough.
   *
   * @param task what was moved, with its candidate as it is now; −1 when it was more than two
   * @param other what was moved besides; the same when it was one
   * @param to the last place that was touched; absent when only the whole schedule tells
   */
  evaluate(from: number, limit: number, task: number, other: number, to = this.tasks): number {
    this.evaluations++;
    const { work, order, candidate, step, model, changed, settled } = this;
    const stop = Math.min(this.stops.length - 1, Math.floor(from / step));
    if (stop < 0) return 0;
    work.copyFrom(this.stops[stop]!);
    const isSeparable = this.isSeparable && task >= 0;
    const telling = model.makespan ? this.tasks : to + Math.max(TELLING, step);
    if (isSeparable) {
      changed.begin();
      changed.touch(task, settled);
      changed.touch(other, settled);
    }
    for (let x = stop * step; x < this.tasks; x++) {
      const next = order[x]!;
      work.at = x;
      const isMoved = next === task || next === other;
      if (!isSeparable) {
        work.place(next, candidate);
      } else if (!isMoved && !changed.isTouched(next, candidate[next]!, settled, work)) {
        if (!work.done[next]) work.replay(next, settled);
      } else {
        const { pulled } = work;
        work.place(next, candidate);
        if (work.pulled > pulled) changed.touchVisits();
        if (next < model.jobs) changed.touchPulled(next, settled);
        if (isMoved || !this.liesAsBefore(next)) {
          changed.touch(next, settled);
          changed.touch(next, work.placements);
        }
      }
      if (priceOf(work, model) >= limit) return Infinity;
      if (x >= telling && work.cost - this.costUpTo[x]! >= limit - this.cost) return Infinity;
    }
    return finalPrice(work, model);
  }

  /** The candidate on which a job with none (−1) ended first when the order was evaluated last. */
  chosenFor(task: number): number {
    return this.work.placements.candidate[task]!;
  }

  private liesAsBefore(task: number): boolean {
    const { model, settled, work, candidate } = this;
    const c = candidate[task]!;
    return settled.isAlike(task, work.placements, task < model.jobs ? model.needAt[c + 1]! - model.needAt[c]! : 0);
  }

  /** Accepts the order as it is now, and keeps partial schedules along it. */
  settle(from: number): void {
    const { work, order, candidate, step } = this;
    const first = Math.min(this.stops.length - 1, Math.floor(from / step));
    if (first < 0) return void (this.cost = 0);
    work.copyFrom(this.stops[first]!);
    for (let x = first * step; x < this.tasks; x++) {
      if (x % step === 0 && x > first * step) this.stops[x / step]!.copyFrom(work);
      work.at = x;
      work.place(order[x]!, candidate);
      this.costUpTo[x] = work.cost;
    }
    // A visit that an earlier job needed was placed before this stretch and has not moved.
    for (let x = first * step; x < this.tasks; x++)
      if (work.putAt[order[x]!]! >= first * step) this.settled.copy(order[x]!, work.placements);
    this.cost = finalPrice(work, this.model);
    this.putAt.set(work.putAt);
    this.endOf.set(work.endOf);
    this.frameEnd.set(work.frameFree);
  }

  load({ order, candidate, isExact = false }: Order): void {
    this.isExact = isExact;
    for (const builder of [this.work, ...this.stops]) builder.isExact = isExact;
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
    const [first, second] = [order[a]!, order[b]!];
    order[a] = second;
    order[b] = first;
    place[second] = a;
    place[first] = b;
  }
}

/** In makespan mode the root mean square of the frames' ends decides between schedules with equal makespans. */
const ENDS_RATE = 0.1;

const priceOf = (state: Builder, model: ScheduleModel): number =>
  model.makespan ? state.makespan + state.cost : state.cost;

function finalPrice(state: Builder, model: ScheduleModel): number {
  if (!model.makespan) return state.cost;
  let ends = 0;
  for (let frame = 0; frame < model.frames; frame++) ends += state.frameFree[frame]! * state.frameFree[frame]!;
  return state.makespan + state.cost + ENDS_RATE * Math.sqrt(ends / model.frames);
}
