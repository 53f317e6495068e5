import type { ScheduleModel } from './model.js';
import { NEVER } from './roster.js';
import type { State } from './state.js';

/** By so much less a published unit costs than one that is as good: less than a minute of waiting or fitting. */
const AS_PUBLISHED = 2.5;
/** The unit that a kept booking had comes before all others. */
const KEPT = 1e6;

/** Chooses the units for the links of a candidate. */
export class Train {
  /** Unit of each need of the candidate, in its order. */
  readonly chosen: Int32Array;
  /** The cost by which each of them was chosen. */
  readonly chosenCost: Float64Array;
  private readonly model: ScheduleModel;
  /** Units that would run out during the job that is being fitted. */
  private readonly passedOver: Int32Array;
  private fitting = 0;
  private leastCost = 0;

  constructor(private readonly state: State) {
    this.model = state.model;
    this.chosen = new Int32Array(Math.max(1, state.model.links));
    this.chosenCost = new Float64Array(this.chosen.length);
    this.passedOver = new Int32Array(state.model.units);
  }

  /** Begins with another job or candidate. */
  begin(): void {
    this.fitting++;
  }

  /** Chooses for each link the unit that is soonest free and in force, then one that is fitted, then one that few jobs want. */
  choose(job: number, candidate: number, frame: number, from: number): boolean {
    const { needAt, needLink, keepUnit, links } = this.model;
    for (let n = needAt[candidate]!, x = 0; n < needAt[candidate + 1]!; n++, x++) {
      const link = needLink[n]!;
      const unit = this.bestOf(n, x, job, keepUnit[job * links + link]!, frame, from);
      if (unit < 0) return false;
      this.chosen[x] = unit;
      this.chosenCost[x] = this.leastCost;
    }
    return true;
  }

  /** When all chosen units are free, min. */
  freeMin(candidate: number): number {
    const { needAt } = this.model;
    const needs = needAt[candidate + 1]! - needAt[candidate]!;
    let free = 0;
    for (let x = 0; x < needs; x++) free = Math.max(free, this.state.unitFree[this.chosen[x]!]!);
    return free;
  }

  /** Minutes from what is on the frame to the chosen train. */
  changeoverMin(candidate: number, frame: number): number {
    const { model, state } = this;
    let min = 0;
    let checks = 0;
    for (let n = model.needAt[candidate]!, x = 0; n < model.needAt[candidate + 1]!; n++, x++) {
      const link = model.needLink[n]!;
      if (this.isFitted(this.chosen[x]!, frame, link)) continue;
      min += model.linkMin[link]!;
      checks |= model.linkChecked[link]!;
    }
    if (checks) min += model.checkMin;
    const last = state.frameLast[frame]!;
    const was = last < 0 ? model.frameTemperature[frame]! : model.temperature[last]!;
    const difference = Math.abs(model.temperature[candidate]! - was);
    if (difference > 0) min += Math.ceil(difference / model.rampCPerMin) + model.soakMin;
    const from = last < 0 ? model.frameFamily[frame]! : model.family[last]!;
    const to = model.family[candidate]!;
    if (from >= 0 && to >= 0) min += model.familyMin[model.familyMatrixAt[frame]! + from * model.families + to]!;
    return min;
  }

  /** −1 when every chosen unit is in force over [start, end), else the first minute from which to try again. */
  tryAgainFrom(candidate: number, start: number, end: number): number {
    const { needAt, unitAlways } = this.model;
    const needs = needAt[candidate + 1]! - needAt[candidate]!;
    for (let x = 0; x < needs; x++) {
      const unit = this.chosen[x]!;
      if (unitAlways[unit]) continue;
      const later = this.usableFrom(unit, start, end - start);
      if (later === start) continue;
      if (later < NEVER) return later;
      // It would run out during the job: another unit of the pool may last.
      this.passedOver[unit] = this.fitting;
      return start;
    }
    return -1;
  }

  /** Whether the pools of a candidate hold a unit. */
  isInPools(unit: number, candidate: number): boolean {
    const { needAt, needPool, poolAt, pool } = this.model;
    for (let n = needAt[candidate]!; n < needAt[candidate + 1]!; n++) {
      for (let x = poolAt[needPool[n]!]!; x < poolAt[needPool[n]! + 1]!; x++) if (pool[x] === unit) return true;
    }
    return false;
  }

  private bestOf(need: number, taken: number, job: number, keep: number, frame: number, from: number): number {
    const { model } = this;
    const link = model.needLink[need]!;
    const begin = model.poolAt[model.needPool[need]!]!;
    const end = model.poolAt[model.needPool[need]! + 1]!;
    this.leastCost = Infinity;
    if (end - begin === 1) {
      const only = model.pool[begin]!;
      return this.isTaken(only, taken) || this.passedOver[only] === this.fitting ? -1 : only;
    }
    let best = -1;
    for (let x = begin; x < end; x++) {
      const unit = model.pool[x]!;
      if (this.passedOver[unit] === this.fitting || this.isTaken(unit, taken)) continue;
      const cost = this.costOf(unit, link, job, frame, from) - (unit === keep ? KEPT : 0);
      if (cost >= this.leastCost) continue;
      this.leastCost = cost;
      best = unit;
    }
    return best;
  }

  /** Cost of a unit for a frame that is free from a minute on: waiting and fitting count alike; the rest only breaks ties. */
  costOf(unit: number, link: number, job: number, frame: number, from: number): number {
    const { model, state } = this;
    let free = state.unitFree[unit]!;
    if (free < from) free = from;
    if (!model.unitAlways[unit]) {
      free = this.usableFrom(unit, free, 1);
      if (free >= NEVER) return Infinity;
    }
    const published = model.publishedUnit[job * model.links + link] === unit ? AS_PUBLISHED : 0;
    const wanted = (free - from) * 4 + model.wanted[unit]! / (model.jobs + 1) - published;
    if (this.isFitted(unit, frame, link)) return wanted;
    return wanted + 4 * model.linkMin[link]! + (state.unitFrame[unit]! < 0 ? 1 : 2);
  }

  private isFitted(unit: number, frame: number, link: number): boolean {
    return this.state.unitFrame[unit] === frame && this.state.fitted[frame * this.model.links + link] === unit;
  }

  private isTaken(unit: number, before: number): boolean {
    for (let x = 0; x < before; x++) if (this.chosen[x] === unit) return true;
    return false;
  }

  /** First minute from `start` on from which a unit is in force for `length` minutes. */
  private usableFrom(unit: number, start: number, length: number): number {
    const { unitAt, windows } = this.model;
    for (let x = unitAt[unit]!; x < unitAt[unit + 1]!; x++) {
      const from = Math.max(start, windows[2 * x]!);
      if (windows[2 * x + 1]! - from >= length) return from;
    }
    const { renewed } = this.state;
    if (renewed[2 * unit]! < 0) return NEVER;
    const from = Math.max(start, renewed[2 * unit]!);
    return renewed[2 * unit + 1]! - from >= length ? from : NEVER;
  }
}
