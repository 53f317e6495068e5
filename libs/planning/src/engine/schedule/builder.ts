import { MOVED_AFTER_MIN } from '../../problem.js';
import { Fit } from './fit.js';
import type { ScheduleModel } from './model.js';
import { Placements } from './placements.js';
import { NEVER } from './roster.js';
import { State } from './state.js';

/** Is called with everything that is placed. */
export interface Recorder {
  job(job: number, candidate: number, setupStart: number, setupMin: number, start: number, end: number): void;
  unit(job: number, link: number, unit: number): void;
  stint(job: number, isSetup: boolean, start: number, end: number, technician: number): void;
  visit(visit: number, start: number, end: number): void;
  unplaced(task: number, waits: boolean): void;
}

/**
 * Builds a schedule task by task (a serial schedule generation scheme). Each task starts at the earliest minute after the
 * last task of its frame and units; technicians may be booked in gaps. The order of the tasks and the candidate of each job
 * determine the schedule.
 */
export class Builder extends State {
  /** Place in the order that is being built. */
  at = 0;
  /** How many visits were placed early because a job needed their unit. */
  pulled = 0;
  recorder: Recorder | null = null;
  /** Whether pinned jobs, too, are placed when their turn comes. */
  isExact = false;
  /** Where each task lies; valid for what was placed since the last reset or copy. */
  readonly placements: Placements;
  /** Times and units of the job that was looked at last. */
  readonly fit: Fit;

  constructor(model: ScheduleModel) {
    super(model);
    this.placements = new Placements(model);
    this.fit = new Fit(this);
  }

  /** Places a task; a job with the given candidate, or with the one that ends first when it is −1. */
  place(task: number, candidate: Int32Array): void {
    if (this.done[task]) return;
    if (task >= this.model.jobs) this.placeVisit(task - this.model.jobs);
    else this.placeJob(task, candidate);
  }

  /** Computes where a job would go now, without placing it. @returns false when it finds no room, or waits for a job not placed yet */
  preview(job: number, candidate: number): boolean {
    const { after, afterAt } = this.model;
    for (let x = afterAt[job]!; x < afterAt[job + 1]!; x++) if (!this.done[after[x]!]) return false;
    return this.fit.find(job, candidate);
  }

  /**
   * Places a task where it lies in another schedule, after the visits that it needed there. Correct only while its frame and
   * pools are in the same state as there.
   */
  replay(task: number, from: Placements): void {
    const { model } = this;
    if (from.pulls[task]! > 0) this.replayVisitsOf(task, from);
    this.done[task] = 1;
    this.putAt[task] = this.at;
    this.placements.copy(task, from);
    const end = from.end[task]!;
    this.cost += from.cost[task]!;
    this.endOf[task] = end;
    if (end >= NEVER) return;
    if (task >= model.jobs) return this.renew(task - model.jobs, end);
    this.occupy(task, from.candidate[task]!, from.setupStart[task]!, end);
  }

  private replayVisitsOf(job: number, from: Placements): void {
    for (let task = this.model.jobs; task < this.model.jobs + this.model.visits; task++)
      if (from.pulledBy[task] === job && !this.done[task]) this.replay(task, from);
  }

  private placeJob(job: number, candidates: Int32Array): void {
    const { model } = this;
    this.done[job] = 1;
    this.putAt[job] = this.at;
    this.placements.pulls[job] = 0;
    for (let x = model.afterAt[job]!; x < model.afterAt[job + 1]!; x++) {
      const before = model.after[x]!;
      this.place(before, candidates);
      if (this.endOf[before]! >= NEVER) return this.leaveOut(job, true);
    }
    const candidate = candidates[job]! < 0 ? this.bestCandidate(job) : candidates[job]!;
    this.placements.candidate[job] = candidate;
    let fits = this.findPlace(job, candidate);
    if (!fits && this.placeVisitsFor(job, candidate)) fits = this.findPlace(job, candidate);
    if (
      fits &&
      !this.isExact &&
      this.pinsDone < model.pinned.length &&
      this.placePinsBefore(job, candidate, candidates)
    ) {
      fits = this.findPlace(job, candidate);
    }
    if (fits) this.commit(job, candidate);
    else this.leaveOut(job, false);
  }

  /**
   * Computes the place of a job: the published one, unless an earlier one is worth the move; a gap that opens before it is
   * left open otherwise. @returns false when it finds no room in the horizon
   */
  private findPlace(job: number, candidate: number): boolean {
    const { model, fit } = this;
    if (!fit.find(job, candidate)) return false;
    const frame = model.candidateFrame[candidate]!;
    const isEarly = model.publishedFrame[job] === frame && fit.start < model.publishedStart[job]!;
    if (!isEarly || model.pinStart[job]! >= 0) return true;
    const early = this.timeCost(job, frame);
    if (fit.find(job, candidate, true) && this.timeCost(job, frame) <= early) return true;
    return fit.find(job, candidate);
  }

  /** The candidate with which the job ends first. */
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

  /** Places pinned jobs that this job would otherwise delay. @returns whether any was placed */
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
      if (!this.findPlace(job, candidate)) return true;
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
    const { model, placements, fit, recorder } = this;
    fit.book(job, recorder ? (isSetup, start, end, who) => recorder.stint(job, isSetup, start, end, who) : null);
    placements.candidate[job] = candidate;
    placements.setupStart[job] = fit.setupStart;
    placements.end[job] = fit.end;
    placements.isPlain[job] = fit.isPlain ? 1 : 0;
    recorder?.job(job, candidate, fit.setupStart, fit.setupMin, fit.start, fit.end);
    for (let n = model.needAt[candidate]!, x = 0; n < model.needAt[candidate + 1]!; n++, x++) {
      placements.units[job * placements.width + x] = fit.train.chosen[x]!;
      placements.unitCost[job * placements.width + x] = fit.train.chosenCost[x]!;
      recorder?.unit(job, model.needLink[n]!, fit.train.chosen[x]!);
    }
    this.endOf[job] = fit.end;
    this.occupy(job, candidate, fit.setupStart, fit.end);
    const cost = this.costOf(job, model.candidateFrame[candidate]!);
    placements.cost[job] = cost;
    this.cost += cost;
  }

  /** Keeps the frame and the job's units busy until it ends. */
  private occupy(job: number, candidate: number, setupStart: number, end: number): void {
    const { model, placements } = this;
    const frame = model.candidateFrame[candidate]!;
    for (let n = model.needAt[candidate]!, x = job * placements.width; n < model.needAt[candidate + 1]!; n++, x++) {
      const unit = placements.units[x]!;
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
    let cost = this.timeCost(job, frame) + model.changeoverRate * setupMin;
    // The square of the frame's hours grows by (after − before) · (after + before).
    const after = this.frameLoad[frame]!;
    const held = end - setupStart;
    cost += (model.loadRate * held * (2 * after - held)) / 3600;
    const missed = start - model.pinStart[job]!;
    if (model.pinStart[job]! >= 0 && missed > 0) cost += model.missRate * missed;
    return cost;
  }

  /** What the times of the job that was looked at last cost: lateness, its end, and the move from its published place. */
  private timeCost(job: number, frame: number): number {
    const { model } = this;
    const { start, end } = this.fit;
    const late = end - model.due[job]!;
    const cost = (late > 0 ? late * model.lateRate[job]! : 0) + model.endRate * end;
    const published = model.publishedFrame[job]!;
    if (published < 0) return cost;
    const moved = Math.abs(start - model.publishedStart[job]!);
    const isMoved = published !== frame || moved > MOVED_AFTER_MIN;
    return cost + model.nearness[job]! * (model.movedRate * moved + (isMoved ? model.movedFrameCost : 0));
  }

  private leaveOut(task: number, waits: boolean): void {
    this.endOf[task] = NEVER;
    this.placements.end[task] = NEVER;
    this.placements.cost[task] = this.model.unplacedCost;
    this.cost += this.model.unplacedCost;
    this.recorder?.unplaced(task, waits);
  }

  /** Places the visits, not placed yet, of the units that a candidate could use. @returns whether there were any */
  private placeVisitsFor(job: number, candidate: number): boolean {
    const { model, placements } = this;
    let any = false;
    for (let visit = 0; visit < model.visits; visit++) {
      if (this.done[model.jobs + visit] || !this.fit.train.isInPools(model.visitUnit[visit]!, candidate)) continue;
      this.placeVisit(visit, true);
      placements.pulledBy[model.jobs + visit] = job;
      placements.pulls[job]!++;
      this.pulled++;
      any = true;
    }
    return any;
  }

  /** @param isNeeded whether a job waits for it, so that it comes as soon as it can rather than when it was published */
  private placeVisit(visit: number, isNeeded = false): void {
    const { model } = this;
    const task = model.jobs + visit;
    this.done[task] = 1;
    this.putAt[task] = this.at;
    this.placements.pulledBy[task] = -1;
    const earliest = Math.max(this.unitFree[model.visitUnit[visit]!]!, model.visitEarliest[visit]!);
    const published = model.publishedVisit[visit]!;
    const isInTime = published + model.visitDuration[visit]! <= model.visitBefore[visit]!;
    const start = !isNeeded && isInTime ? Math.max(earliest, published) : earliest;
    const end = start + model.visitDuration[visit]!;
    if (end > model.horizonMin) return this.leaveOut(task, false);
    this.endOf[task] = end;
    this.placements.end[task] = end;
    const cost = Math.max(0, end - model.visitBefore[visit]!) * model.missRate;
    this.placements.cost[task] = cost;
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
