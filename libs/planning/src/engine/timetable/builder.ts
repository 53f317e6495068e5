import { Fit } from './fit.js';
import type { TimetableModel } from './model.js';
import { Outcome } from './outcome.js';
import { NEVER } from './roster.js';
import { State } from './state.js';

// Taken out once: looking them up each time is slow inside the context that specs run in.
const { abs, max } = Math;

/** Told of what is placed, when somebody wants to know more than the cost. */
export interface Recorder {
  job(job: number, candidate: number, setupStart: number, setupMin: number, start: number, end: number): void;
  unit(job: number, link: number, unit: number): void;
  stint(job: number, isSetup: boolean, start: number, end: number, technician: number): void;
  visit(visit: number, start: number, end: number): void;
  unplaced(task: number, waits: boolean): void;
}

/**
 * Grows a timetable task by task. Each task is put at its earliest minute behind what its frame and units already do;
 * technicians may be booked in gaps. The order of the tasks and the candidate of each job say everything else.
 */
export class Builder extends State {
  /** Place in the order that is being built. */
  at = 0;
  /** How many visits were put down because a job needed their unit. */
  pulled = 0;
  recorder: Recorder | null = null;
  /** Where each task lies; holds for what was placed since the last reset or copy. */
  readonly outcome: Outcome;
  /** Times and units of the job that was looked at last. */
  readonly fit: Fit;

  constructor(model: TimetableModel) {
    super(model);
    this.outcome = new Outcome(model);
    this.fit = new Fit(this);
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
    return this.fit.find(job, candidate);
  }

  /**
   * Puts a task where it lies in an outcome, and before it the visits that it needed there; right only while its frame and
   * pools stand as they stood there.
   */
  replay(task: number, from: Outcome): void {
    const { model } = this;
    if (from.pulls[task]! > 0) this.replayVisitsOf(task, from);
    this.done[task] = 1;
    this.putAt[task] = this.at;
    this.outcome.copy(task, from);
    const end = from.end[task]!;
    this.cost += from.cost[task]!;
    this.endOf[task] = end;
    if (end >= NEVER) return;
    if (task >= model.jobs) return this.renew(task - model.jobs, end);
    this.occupy(task, from.candidate[task]!, from.setupStart[task]!, end);
  }

  private replayVisitsOf(job: number, from: Outcome): void {
    for (let task = this.model.jobs; task < this.model.jobs + this.model.visits; task++)
      if (from.pulledBy[task] === job && !this.done[task]) this.replay(task, from);
  }

  private placeJob(job: number, candidates: Int32Array): void {
    const { model, fit } = this;
    this.done[job] = 1;
    this.putAt[job] = this.at;
    this.outcome.pulls[job] = 0;
    for (let x = model.afterAt[job]!; x < model.afterAt[job + 1]!; x++) {
      const before = model.after[x]!;
      this.place(before, candidates);
      if (this.endOf[before]! >= NEVER) return this.leaveOut(job, true);
    }
    const candidate = candidates[job]! < 0 ? this.bestCandidate(job) : candidates[job]!;
    this.outcome.candidate[job] = candidate;
    let fits = fit.find(job, candidate);
    if (!fits && this.placeVisitsFor(job, candidate)) fits = fit.find(job, candidate);
    if (fits && this.pinsDone < model.pinned.length && this.placePinsBefore(job, candidate, candidates)) {
      fits = fit.find(job, candidate);
    }
    if (fits) this.commit(job, candidate);
    else this.leaveOut(job, false);
  }

  /** The candidate with which the job ends first, as things stand. */
  private bestCandidate(job: number): number {
    const { model, fit } = this;
    let best = model.candidateAt[job]!;
    let least = Infinity;
    for (let c = best; c < model.candidateAt[job + 1]!; c++) {
      if (!fit.find(job, c)) continue;
      // Of two that end alike, the one with less changeover, then the fuller frame.
      const value = fit.end * 64 + fit.setupMin * 16 - this.frameFree[model.candidateFrame[c]!]! / 64;
      if (value >= least) continue;
      least = value;
      best = c;
    }
    return best;
  }

  /** Pinned jobs come before whatever would still be in their way when they have to begin. @returns whether any was placed */
  private placePinsBefore(job: number, candidate: number, candidates: Int32Array): boolean {
    const { pinned, pinStart, pinFrom } = this.model;
    const own = pinStart[job]! < 0 ? NEVER : pinStart[job]!;
    let placed = false;
    for (let x = this.pinsDone; x < pinned.length && pinStart[pinned[x]!]! < own; x++) {
      const pin = pinned[x]!;
      if (this.done[pin]) {
        if (x === this.pinsDone) this.pinsDone++;
        continue;
      }
      if (pinFrom[pin]! >= this.fit.end || !this.isInTheWay(pin, candidate)) continue;
      this.place(pin, candidates);
      placed = true;
      if (!this.fit.find(job, candidate)) return true;
    }
    return placed;
  }

  private isInTheWay(pin: number, candidate: number): boolean {
    const { model, fit } = this;
    const theirs = model.candidateAt[pin]!;
    if (model.technicians > 0 || model.candidateFrame[theirs] === model.candidateFrame[candidate]) return true;
    const needs = model.needAt[candidate + 1]! - model.needAt[candidate]!;
    for (let x = 0; x < needs; x++) if (fit.train.isInPools(fit.train.chosen[x]!, theirs)) return true;
    return false;
  }

  private commit(job: number, candidate: number): void {
    const { model, outcome, fit, recorder } = this;
    fit.book(
      job,
      candidate,
      recorder ? (isSetup, start, end, who) => recorder.stint(job, isSetup, start, end, who) : null,
    );
    outcome.candidate[job] = candidate;
    outcome.setupStart[job] = fit.setupStart;
    outcome.end[job] = fit.end;
    outcome.isPlain[job] = fit.isPlain ? 1 : 0;
    recorder?.job(job, candidate, fit.setupStart, fit.setupMin, fit.start, fit.end);
    for (let n = model.needAt[candidate]!, x = 0; n < model.needAt[candidate + 1]!; n++, x++) {
      outcome.units[job * outcome.width + x] = fit.train.chosen[x]!;
      outcome.unitCost[job * outcome.width + x] = fit.train.chosenCost[x]!;
      recorder?.unit(job, model.needLink[n]!, fit.train.chosen[x]!);
    }
    this.endOf[job] = fit.end;
    this.occupy(job, candidate, fit.setupStart, fit.end);
    const cost = this.costOf(job, model.candidateFrame[candidate]!);
    outcome.cost[job] = cost;
    this.cost += cost;
  }

  /** The frame and the units in the outcome are a job's until it ends. */
  private occupy(job: number, candidate: number, setupStart: number, end: number): void {
    const { model, outcome } = this;
    const frame = model.candidateFrame[candidate]!;
    for (let n = model.needAt[candidate]!, x = job * outcome.width; n < model.needAt[candidate + 1]!; n++, x++) {
      const unit = outcome.units[x]!;
      this.fitted[frame * model.links + model.needLink[n]!] = unit;
      this.unitFrame[unit] = frame;
      this.unitFree[unit] = end;
    }
    this.frameFree[frame] = end;
    this.frameLast[frame] = candidate;
    this.frameLoad[frame]! += end - setupStart;
    if (end > this.makespan) this.makespan = end;
  }

  private costOf(job: number, frame: number): number {
    const { model } = this;
    const { start, end, setupStart, setupMin } = this.fit;
    const late = end - model.due[job]!;
    let cost = (late > 0 ? late * model.lateRate[job]! : 0) + model.changeoverRate * setupMin + model.endRate * end;
    // The square of the frame's hours grows by (after − before) · (after + before).
    const after = this.frameLoad[frame]!;
    const held = end - setupStart;
    cost += (model.loadRate * held * (2 * after - held)) / 3600;
    const published = model.publishedFrame[job]!;
    if (published >= 0 && published !== frame) cost += model.movedFrameCost;
    if (published >= 0) cost += model.movedRate * abs(start - model.publishedStart[job]!);
    const missed = start - model.pinStart[job]!;
    if (model.pinStart[job]! >= 0 && missed > 0) cost += model.missRate * missed;
    return cost;
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
      if (this.done[model.jobs + visit] || !this.fit.train.isInPools(model.visitUnit[visit]!, candidate)) continue;
      this.placeVisit(visit);
      outcome.pulledBy[model.jobs + visit] = job;
      outcome.pulls[job]!++;
      this.pulled++;
      any = true;
    }
    return any;
  }

  private placeVisit(visit: number): void {
    const { model } = this;
    const task = model.jobs + visit;
    this.done[task] = 1;
    this.putAt[task] = this.at;
    this.outcome.pulledBy[task] = -1;
    const start = max(this.unitFree[model.visitUnit[visit]!]!, model.visitEarliest[visit]!);
    const end = start + model.visitDuration[visit]!;
    if (end > model.horizonMin) return this.leaveOut(task, false);
    this.endOf[task] = end;
    this.outcome.end[task] = end;
    const cost = max(0, end - model.visitBefore[visit]!) * model.missRate;
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
