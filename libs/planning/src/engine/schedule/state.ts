import type { ScheduleModel } from './model.js';
import { Roster } from './roster.js';

/** A partial schedule: what is placed, and until when each frame, unit and technician is busy. */
export class State {
  cost = 0;
  makespan = 0;
  /** So many of the pinned jobs, in order of start, are placed already. */
  pinsDone = 0;
  /** End of each placed task, min; NEVER for one without a place. */
  readonly endOf: Int32Array;
  readonly done: Int32Array;
  /** At which place of the order each task was really placed; a later task may need one before it. */
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
  /** All arrays in one buffer, so that one call copies the state. */
  private readonly all: Int32Array;

  constructor(readonly model: ScheduleModel) {
    const { frames, units } = model;
    const tasks = model.jobs + model.visits;
    this.all = new Int32Array(3 * tasks + 3 * frames + model.fitted.length + 4 * units);
    let from = 0;
    const next = (size: number): Int32Array => this.all.subarray(from, (from += size));
    this.endOf = next(tasks);
    this.done = next(tasks);
    this.putAt = next(tasks);
    this.frameFree = next(frames);
    this.frameLast = next(frames);
    this.frameLoad = next(frames);
    this.fitted = next(model.fitted.length);
    this.unitFrame = next(units);
    this.unitFree = next(units);
    this.renewed = next(2 * units);
    this.roster = new Roster(model);
    this.reset();
  }

  /** Back to minute 0. */
  reset(): void {
    const { model } = this;
    this.cost = 0;
    this.makespan = 0;
    this.pinsDone = 0;
    this.all.fill(0);
    this.frameFree.set(model.frameFree);
    this.frameLast.fill(-1);
    this.fitted.set(model.fitted);
    this.unitFrame.set(model.unitFrame);
    this.unitFree.set(model.unitFree);
    this.renewed.fill(-1);
    this.roster.reset();
  }

  copyFrom(other: State): void {
    this.cost = other.cost;
    this.makespan = other.makespan;
    this.pinsDone = other.pinsDone;
    this.all.set(other.all);
    if (this.model.technicians > 0) this.roster.copyFrom(other.roster);
  }
}
