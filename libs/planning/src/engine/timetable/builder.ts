import type { TimetableModel } from './model.js';
import { Outcome } from './outcome.js';
import { NEVER, Roster } from './roster.js';

/** Told of what is placed, when somebody wants to know more than the cost. */
export interface Recorder {
  job(job: number, candidate: number, setupStart: number, setupMin: number, start: number, end: number): void;
  unit(job: number, link: number, unit: number): void;
  stint(job: number, isSetup: boolean, start: number, end: number, technician: number): void;
  visit(visit: number, start: number, end: number): void;
  unplaced(task: number, waits: boolean): void;
}

/** Times that are tried for one job before it counts as finding no room. */
const MOST_TRIES = 400;

/**
 * Grows a timetable task by task. Each task is put at its earliest minute behind what its frame and units already do;
 * technicians may be booked in gaps. The order of the tasks and the candidate of each job say everything else.
 */
export class Builder {
  cost = 0;
  makespan = 0;
  pinsDone = 0;
  /** Place in the order that is being built. */
  at = 0;
  recorder: Recorder | null = null;
  readonly endOf: Int32Array;
  readonly done: Int32Array;
  /** At which place each task was really put down; a later task may ask for one before it. */
  readonly putAt: Int32Array;
  readonly frameFree: Int32Array;
  /** Candidate that ran last on each frame; −1 while the rig of minute 0 stands. */
  readonly frameLast: Int32Array;
  readonly frameLoad: Int32Array;
  readonly fitted: Int32Array;
  readonly unitFrame: Int32Array;
  readonly unitFree: Int32Array;
  /** In force again after its visit: [2u] from, [2u + 1] until. */
  readonly renewed: Int32Array;
  readonly roster: Roster;
  /** Where each task lies; holds for what was placed since the last reset or copy. */
  readonly outcome: Outcome;

  /** All of the above in one piece, so that a state is copied at once. */
  private readonly state: Int32Array;
  private readonly chosen: Int32Array;
  private setupStart = 0;
  private setupMin = 0;
  private start = 0;
  private end = 0;
  private setupBy = -1;
  /** Units that would run out during the job that is being fitted. */
  private readonly passedOver: Int32Array;
  /** How many visits were put down because a job needed their unit. */
  pulled = 0;
  private fitting = 0;

  constructor(readonly model: TimetableModel) {
    const tasks = model.jobs + model.visits;
    const sizes = [
      tasks,
      tasks,
      tasks,
      model.frames,
      model.frames,
      model.frames,
      model.fitted.length,
      model.units,
      model.units,
      2 * model.units,
    ];
    this.state = new Int32Array(sizes.reduce((sum, size) => sum + size, 0));
    let from = 0;
    const [endOf, done, putAt, frameFree, frameLast, frameLoad, fitted, unitFrame, unitFree, renewed] = sizes.map(
      (size) => this.state.subarray(from, (from += size)),
    ) as [
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
    ];
    this.endOf = endOf;
    this.done = done;
    this.putAt = putAt;
    this.frameFree = frameFree;
    this.frameLast = frameLast;
    this.frameLoad = frameLoad;
    this.fitted = fitted;
    this.unitFrame = unitFrame;
    this.unitFree = unitFree;
    this.renewed = renewed;
    this.roster = new Roster(model);
    this.outcome = new Outcome(model);
    this.chosen = new Int32Array(Math.max(1, model.links));
    this.passedOver = new Int32Array(model.units);
    this.reset();
  }

  reset(): void {
    const { model } = this;
    this.cost = 0;
    this.makespan = 0;
    this.pinsDone = 0;
    this.state.fill(0);
    this.frameFree.set(model.frameFree);
    this.frameLast.fill(-1);
    this.fitted.set(model.fitted);
    this.unitFrame.set(model.unitFrame);
    this.unitFree.set(model.unitFree);
    this.renewed.fill(-1);
    this.roster.reset();
  }

  copyFrom(other: Builder): void {
    this.cost = other.cost;
    this.makespan = other.makespan;
    this.pinsDone = other.pinsDone;
    this.state.set(other.state);
    if (this.model.technicians > 0) this.roster.copyFrom(other.roster);
  }

  /** Places a task; a job with the given candidate, or with the one that ends first when it is −1. */
  place(task: number, candidate: Int32Array): void {
    if (this.done[task]) return;
    if (task >= this.model.jobs) this.placeVisit(task - this.model.jobs);
    else this.placeJob(task, candidate);
  }

  /** Works out where a job would go now, without placing it. @returns false when it finds no room, or waits for one not placed yet */
  preview(job: number, candidate: number): boolean {
    const { after, afterAt } = this.model;
    for (let x = afterAt[job]!; x < afterAt[job + 1]!; x++) if (!this.done[after[x]!]) return false;
    return this.fits(job, candidate);
  }

  /** Start and end of the work that was previewed last, min. */
  get previewStart(): number {
    return this.start;
  }

  get previewEnd(): number {
    return this.end;
  }

  private placeJob(job: number, candidates: Int32Array): void {
    const { model } = this;
    this.done[job] = 1;
    this.putAt[job] = this.at;
    this.outcome.pulls[job] = 0;
    for (let x = model.afterAt[job]!; x < model.afterAt[job + 1]!; x++) {
      const before = model.after[x]!;
      this.place(before, candidates);
      if (this.endOf[before]! >= NEVER) return this.leaveOut(job, true);
    }
    let candidate = candidates[job]!;
    if (candidate < 0) candidate = this.bestCandidate(job);
    this.outcome.candidate[job] = candidate;
    if (!this.fits(job, candidate)) {
      if (!this.placeVisitsFor(job, candidate) || !this.fits(job, candidate)) return this.leaveOut(job, false);
    }
    if (this.pinsDone < model.pinned.length && this.placePinsBefore(job, candidate, candidates)) {
      if (!this.fits(job, candidate)) return this.leaveOut(job, false);
    }
    this.commit(job, candidate);
  }

  /** Pinned jobs come before whatever would still be in their way when they have to begin. @returns whether any was placed */
  private placePinsBefore(job: number, candidate: number, candidates: Int32Array): boolean {
    const { model } = this;
    let placed = false;
    for (let x = this.pinsDone; x < model.pinned.length; x++) {
      const pin = model.pinned[x]!;
      // Half a day is room for any setup in front of the pinned start.
      if (model.pinStart[pin]! - 720 >= this.end) break;
      if (this.done[pin]) {
        if (x === this.pinsDone) this.pinsDone++;
        continue;
      }
      if (!this.isInTheWay(pin, candidate)) continue;
      this.place(pin, candidates);
      placed = true;
      if (!this.fits(job, candidate)) return true;
    }
    return placed;
  }

  private isInTheWay(pin: number, candidate: number): boolean {
    const { model } = this;
    if (model.technicians > 0) return true;
    const theirs = model.candidateAt[pin]!;
    if (model.candidateFrame[theirs] === model.candidateFrame[candidate]) return true;
    for (let n = model.needAt[theirs]!; n < model.needAt[theirs + 1]!; n++) {
      for (let x = model.poolAt[model.needPool[n]!]!; x < model.poolAt[model.needPool[n]! + 1]!; x++) {
        for (let link = 0; link < model.needAt[candidate + 1]! - model.needAt[candidate]!; link++) {
          if (this.chosen[link] === model.pool[x]) return true;
        }
      }
    }
    return false;
  }

  /** The candidate with which the job ends first, as things stand. */
  private bestCandidate(job: number): number {
    const { model } = this;
    let best = model.candidateAt[job]!;
    let least = Infinity;
    for (let c = best; c < model.candidateAt[job + 1]!; c++) {
      if (!this.fits(job, c)) continue;
      // Of two that end alike, the one with less changeover, then the fuller frame.
      const value = this.end * 64 + this.setupMin * 16 - this.frameFree[model.candidateFrame[c]!]! / 64;
      if (value < least) {
        least = value;
        best = c;
      }
    }
    return best;
  }

  /** Works out units, setup, start and end of a job on a candidate. @returns false when it finds no room in the horizon */
  private fits(job: number, candidate: number): boolean {
    const { model } = this;
    const frame = model.candidateFrame[candidate]!;
    let from = this.frameFree[frame]!;
    this.fitting++;
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      if (!this.chooseUnits(job, candidate, frame, from)) return false;
      const later = this.tryFrom(job, candidate, frame, Math.max(from, this.unitsFree(candidate)));
      if (later < 0) return this.end <= model.horizonMin;
      if (later >= model.horizonMin) return false;
      from = later;
    }
    return false;
  }

  private unitsFree(candidate: number): number {
    const { needAt } = this.model;
    let free = 0;
    for (let n = needAt[candidate]!, x = 0; n < needAt[candidate + 1]!; n++, x++)
      free = Math.max(free, this.unitFree[this.chosen[x]!]!);
    return free;
  }

  /** Earliest setup, work and end from a minute on. @returns −1 when they stand, else the minute from which to try again */
  private tryFrom(job: number, candidate: number, frame: number, from: number): number {
    const { model } = this;
    let ready = model.release[job]!;
    for (let x = model.afterAt[job]!; x < model.afterAt[job + 1]!; x++)
      ready = Math.max(ready, this.endOf[model.after[x]!]!);
    const pin = model.pinStart[job]!;
    if (pin > ready) ready = pin;
    const setup = this.changeover(candidate, frame);
    this.setupMin = setup;
    // The setup ends when the work can begin, so that nothing is held longer than it has to be.
    let at = Math.max(from, ready - setup);
    this.setupBy = -1;
    if (setup > 0) {
      at = this.earliestPiece(job, frame, at, setup, true);
      if (at >= NEVER) return NEVER;
    }
    this.setupStart = at;
    const work = this.work(job, candidate, frame, Math.max(at + setup, ready));
    if (work >= NEVER) return NEVER;
    if (setup === 0) this.setupStart = this.start;
    return this.unitsStandThrough(candidate);
  }

  /** −1 when every chosen unit is in force from setup to end, else the first minute from which it might be. */
  private unitsStandThrough(candidate: number): number {
    const { needAt } = this.model;
    for (let n = needAt[candidate]!, x = 0; n < needAt[candidate + 1]!; n++, x++) {
      const unit = this.chosen[x]!;
      if (this.model.unitAlways[unit]) continue;
      const later = this.usableFrom(unit, this.setupStart, this.end);
      if (later === this.setupStart) continue;
      if (later < NEVER) return later;
      // It would run out during the job: another unit of the pool may last.
      this.passedOver[unit] = this.fitting;
      return this.setupStart;
    }
    return -1;
  }

  /** First minute from `start` on from which a unit is in force long enough. */
  private usableFrom(unit: number, start: number, end: number): number {
    const { unitAt, windows } = this.model;
    for (let x = unitAt[unit]!; x < unitAt[unit + 1]!; x++) {
      const from = Math.max(start, windows[2 * x]!);
      if (windows[2 * x + 1]! - from >= end - start) return from;
    }
    const renewed = this.renewed[2 * unit]!;
    if (renewed < 0) return NEVER;
    const from = Math.max(start, renewed);
    return this.renewed[2 * unit + 1]! - from >= end - start ? from : NEVER;
  }

  /** Picks a unit for each link: in force, soonest free; then one that is fitted; then one that stands free and few want. */
  private chooseUnits(job: number, candidate: number, frame: number, from: number): boolean {
    const { model } = this;
    for (let n = model.needAt[candidate]!, x = 0; n < model.needAt[candidate + 1]!; n++, x++) {
      const link = model.needLink[n]!;
      const keep = model.keepUnit[job * model.links + link]!;
      const begin = model.poolAt[model.needPool[n]!]!;
      const end = model.poolAt[model.needPool[n]! + 1]!;
      let best = end - begin === 1 ? model.pool[begin]! : -1;
      let least = Infinity;
      for (let y = begin; y < end && end - begin > 1; y++) {
        const unit = model.pool[y]!;
        if (this.passedOver[unit] === this.fitting || this.isTaken(unit, x)) continue;
        let free = this.unitFree[unit]!;
        if (free < from) free = from;
        if (!model.unitAlways[unit]) free = this.usableFrom(unit, free, free + 1);
        if (free >= NEVER) continue;
        const isFitted = this.unitFrame[unit] === frame && this.fitted[frame * model.links + link] === unit;
        const cost =
          (free - from) * 4 +
          (isFitted ? 0 : 4 * model.linkMin[link]! + (this.unitFrame[unit]! < 0 ? 1 : 2)) +
          model.wanted[unit]! / (model.jobs + 1) -
          (unit === keep ? 1e6 : 0);
        if (cost < least) {
          least = cost;
          best = unit;
        }
      }
      if (best < 0 || this.isTaken(best, x) || this.passedOver[best] === this.fitting) return false;
      this.chosen[x] = best;
    }
    return true;
  }

  private isTaken(unit: number, before: number): boolean {
    for (let x = 0; x < before; x++) if (this.chosen[x] === unit) return true;
    return false;
  }

  /** Minutes from what is on the frame to the chosen train. */
  private changeover(candidate: number, frame: number): number {
    const { model } = this;
    let min = 0;
    let checks = 0;
    for (let n = model.needAt[candidate]!, x = 0; n < model.needAt[candidate + 1]!; n++, x++) {
      const link = model.needLink[n]!;
      const unit = this.chosen[x]!;
      if (this.fitted[frame * model.links + link] === unit && this.unitFrame[unit] === frame) continue;
      min += model.linkMin[link]!;
      checks |= model.linkChecked[link]!;
    }
    if (checks) min += model.checkMin;
    const last = this.frameLast[frame]!;
    const was = last < 0 ? model.frameTemperature[frame]! : model.temperature[last]!;
    const difference = Math.abs(model.temperature[candidate]! - was);
    if (difference > 0) min += Math.ceil(difference / model.rampCPerMin) + model.soakMin;
    const from = last < 0 ? model.frameFamily[frame]! : model.family[last]!;
    const to = model.family[candidate]!;
    if (from >= 0 && to >= 0) min += model.familyMin[model.familyMatrixAt[frame]! + from * model.families + to]!;
    return min;
  }

  /** Earliest start of a stretch of `length` minutes inside working windows of the frame with one technician throughout. */
  private earliestPiece(job: number, frame: number, from: number, length: number, needsSomebody: boolean): number {
    const { model } = this;
    const lastBy = this.setupBy;
    let at = from;
    for (;;) {
      this.setupBy = lastBy;
      if (!model.frameAlways[frame]) at = this.openFrom(model.frameAt, frame, at, length);
      if (at >= NEVER || model.technicians === 0 || !needsSomebody) return at;
      const free = this.somebodyFrom(job, at, length);
      if (free === at || free >= NEVER) return free;
      at = free;
    }
  }

  /** First minute from `from` on with `length` minutes inside one window of an owner, or NEVER. */
  private openFrom(owners: Int32Array, owner: number, from: number, length: number): number {
    const { windows } = this.model;
    let low = owners[owner]!;
    let high = owners[owner + 1]!;
    const end = high;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (windows[2 * mid + 1]! > from) high = mid;
      else low = mid + 1;
    }
    for (let x = low; x < end; x++) {
      const start = Math.max(from, windows[2 * x]!);
      if (windows[2 * x + 1]! - start >= length) return start;
    }
    return NEVER;
  }

  /** Earliest minute at which an authorised technician is free; `setupBy` says who, and stays who it was while that costs nothing. */
  private somebodyFrom(job: number, from: number, length: number): number {
    const { technicians, allowed, techWords } = this.model;
    let who = this.setupBy;
    let best = who < 0 ? NEVER : this.roster.earliest(who, from, length);
    if (best === from) return from;
    for (let t = 0; t < technicians; t++) {
      if (!(allowed[job * techWords + (t >> 5)]! & (1 << (t & 31)))) continue;
      const free = this.roster.earliest(t, from, length);
      if (free < best) {
        best = free;
        who = t;
        if (free === from) break;
      }
    }
    this.setupBy = who;
    return best;
  }

  /** Places the specimens; sets `start` and `end`. With `recorder` set and not on trial, books technicians too. */
  private work(job: number, candidate: number, frame: number, from: number): number {
    const { model } = this;
    const per = model.perSpecimen[candidate]!;
    const specimens = model.specimens[candidate]!;
    if (!model.throughout[job]) return this.runAlone(frame, from, per * specimens);
    if (model.technicians === 0 && model.frameAlways[frame]) {
      this.start = from;
      this.end = from + per * specimens;
      return this.end;
    }
    let at = from;
    let left = specimens;
    let first = -1;
    while (left > 0) {
      const start = this.earliestPiece(job, frame, at, per, true);
      if (start >= NEVER) return NEVER;
      if (first < 0) first = start;
      const count = per === 0 ? left : Math.min(left, Math.floor((this.stretchEnd(frame, start) - start) / per));
      at = start + count * per;
      left -= count;
      if (this.booking) this.book(job, false, start, at);
    }
    this.start = first;
    this.end = at;
    return at;
  }

  /** A run that needs nobody goes on over closed hours, but begins while the lab is open and never while the frame is down. */
  private runAlone(frame: number, from: number, length: number): number {
    const { model } = this;
    let at = from;
    if (!model.frameAlways[frame]) {
      for (;;) {
        const open = this.openFrom(model.frameAt, frame, at, 1);
        if (open >= NEVER) return NEVER;
        const run = this.openFrom(model.runAt, frame, open, length);
        if (run >= NEVER) return NEVER;
        at = run;
        if (run === open) break;
      }
    }
    this.start = at;
    this.end = at + length;
    return this.end;
  }

  /** Until when work that begins at a minute can go on without a break. */
  private stretchEnd(frame: number, start: number): number {
    const { model } = this;
    let end = NEVER;
    if (!model.frameAlways[frame]) {
      const { windows, frameAt } = model;
      for (let x = frameAt[frame]!; x < frameAt[frame + 1]!; x++) {
        if (windows[2 * x + 1]! > start) {
          end = windows[2 * x + 1]!;
          break;
        }
      }
    }
    return model.technicians > 0 ? Math.min(end, this.roster.freeUntil(this.setupBy, start)) : end;
  }

  private booking = false;

  private book(job: number, isSetup: boolean, start: number, end: number): void {
    if (!this.booking) return;
    const who = this.model.technicians > 0 ? this.setupBy : -1;
    if (who >= 0 && end > start) this.roster.take(who, start, end);
    this.recorder?.stint(job, isSetup, start, end, who);
  }

  /** Puts a task where it lies in an outcome, and before it the visits that it needed; right only while its frame and pools stand as they stood there. */
  replay(task: number, from: Outcome): void {
    const { model } = this;
    if (from.pulls[task]! > 0) {
      for (let visit = 0; visit < model.visits; visit++)
        if (from.pulledBy[model.jobs + visit] === task && !this.done[model.jobs + visit])
          this.replay(model.jobs + visit, from);
    }
    this.done[task] = 1;
    this.putAt[task] = this.at;
    if (this.outcome !== from) this.outcome.copy(task, from);
    const end = from.end[task]!;
    this.cost += from.cost[task]!;
    this.endOf[task] = end;
    if (end >= NEVER) return;
    if (task >= model.jobs) return this.renew(task - model.jobs, end);
    const candidate = from.candidate[task]!;
    const frame = model.candidateFrame[candidate]!;
    for (let n = model.needAt[candidate]!, x = task * from.width; n < model.needAt[candidate + 1]!; n++, x++) {
      const unit = from.units[x]!;
      this.fitted[frame * model.links + model.needLink[n]!] = unit;
      this.unitFrame[unit] = frame;
      this.unitFree[unit] = end;
    }
    this.frameFree[frame] = end;
    this.frameLast[frame] = candidate;
    this.frameLoad[frame]! += end - from.setupStart[task]!;
    if (end > this.makespan) this.makespan = end;
  }

  private commit(job: number, candidate: number): void {
    const { model, outcome } = this;
    const frame = model.candidateFrame[candidate]!;
    this.bookAll(job, candidate, frame);
    outcome.candidate[job] = candidate;
    outcome.setupStart[job] = this.setupStart;
    outcome.end[job] = this.end;
    this.recorder?.job(job, candidate, this.setupStart, this.setupMin, this.start, this.end);
    for (let n = model.needAt[candidate]!, x = 0; n < model.needAt[candidate + 1]!; n++, x++) {
      const unit = this.chosen[x]!;
      outcome.units[job * outcome.width + x] = unit;
      this.recorder?.unit(job, model.needLink[n]!, unit);
      this.fitted[frame * model.links + model.needLink[n]!] = unit;
      this.unitFrame[unit] = frame;
      this.unitFree[unit] = this.end;
    }
    this.frameFree[frame] = this.end;
    this.frameLast[frame] = candidate;
    this.endOf[job] = this.end;
    this.count(job, frame);
  }

  /** Goes through setup and work once more, now for good, so that technicians are taken. */
  private bookAll(job: number, candidate: number, frame: number): void {
    const { model } = this;
    const { setupStart, setupMin, start } = this;
    if (model.technicians === 0 && !this.recorder) return;
    this.booking = true;
    this.setupBy = -1;
    if (setupMin > 0) {
      this.earliestPiece(job, frame, setupStart, setupMin, true);
      this.book(job, true, setupStart, setupStart + setupMin);
    }
    if (model.throughout[job] && (model.technicians > 0 || !model.frameAlways[frame]))
      this.work(job, candidate, frame, start);
    else this.recorder?.stint(job, false, start, this.end, -1);
    this.booking = false;
  }

  private count(job: number, frame: number): void {
    const { model } = this;
    const late = this.end - model.due[job]!;
    this.frameLoad[frame]! += this.end - this.setupStart;
    if (this.end > this.makespan) this.makespan = this.end;
    let cost =
      (late > 0 ? late * model.lateRate[job]! : 0) + model.changeoverRate * this.setupMin + model.endRate * this.end;
    if (model.loadRate > 0) {
      const after = this.frameLoad[frame]!;
      const before = after - (this.end - this.setupStart);
      cost += (model.loadRate * (after - before) * (after + before)) / 3600;
    }
    const published = model.publishedFrame[job]!;
    if (published >= 0) {
      if (published !== frame) cost += model.movedFrameCost;
      cost += model.movedRate * Math.abs(this.start - model.publishedStart[job]!);
    }
    if (model.pinStart[job]! >= 0 && this.start > model.pinStart[job]!)
      cost += model.missRate * (this.start - model.pinStart[job]!);
    this.outcome.cost[job] = cost;
    this.cost += cost;
  }

  private leaveOut(task: number, waits: boolean): void {
    this.endOf[task] = NEVER;
    this.outcome.end[task] = NEVER;
    this.outcome.cost[task] = this.model.unplacedCost;
    this.cost += this.model.unplacedCost;
    this.recorder?.unplaced(task, waits);
  }

  /** Places the open visits of the units that a candidate could use. @returns whether there were any */
  private placeVisitsFor(job: number, candidate: number): boolean {
    const { model, outcome } = this;
    let any = false;
    for (let visit = 0; visit < model.visits; visit++) {
      if (this.done[model.jobs + visit] || !this.isInPools(model.visitUnit[visit]!, candidate)) continue;
      this.placeVisit(visit);
      outcome.pulledBy[model.jobs + visit] = job;
      outcome.pulls[job]!++;
      this.pulled++;
      any = true;
    }
    return any;
  }

  private isInPools(unit: number, candidate: number): boolean {
    const { needAt, needPool, poolAt, pool } = this.model;
    for (let n = needAt[candidate]!; n < needAt[candidate + 1]!; n++) {
      for (let x = poolAt[needPool[n]!]!; x < poolAt[needPool[n]! + 1]!; x++) if (pool[x] === unit) return true;
    }
    return false;
  }

  private placeVisit(visit: number): void {
    const { model } = this;
    const task = model.jobs + visit;
    this.done[task] = 1;
    this.putAt[task] = this.at;
    this.outcome.pulledBy[task] = -1;
    const unit = model.visitUnit[visit]!;
    const start = Math.max(this.unitFree[unit]!, model.visitEarliest[visit]!);
    const end = start + model.visitDuration[visit]!;
    if (end > model.horizonMin) return this.leaveOut(task, false);
    this.endOf[task] = end;
    this.outcome.end[task] = end;
    const cost = Math.max(0, end - model.visitBefore[visit]!) * model.missRate;
    this.outcome.cost[task] = cost;
    this.cost += cost;
    this.renew(visit, end);
    this.recorder?.visit(visit, start, end);
  }

  /** After its visit a unit is back, on no frame, and in force again. */
  private renew(visit: number, end: number): void {
    const unit = this.model.visitUnit[visit]!;
    this.unitFree[unit] = end;
    this.unitFrame[unit] = -1;
    this.renewed[2 * unit] = end;
    this.renewed[2 * unit + 1] = this.model.visitUntil[visit]!;
  }
}
