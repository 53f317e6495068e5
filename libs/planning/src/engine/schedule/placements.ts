import type { ScheduleModel } from './model.js';
import { NEVER } from './roster.js';

/** Where each task lies in one schedule, and what it costs. */
export class Placements {
  readonly candidate: Int32Array;
  readonly setupStart: Int32Array;
  /** NEVER for a task without a place. */
  readonly end: Int32Array;
  readonly cost: Float64Array;
  /** How many visits were placed early because of each job, which needed their units; and for each visit that job, −1 for none. */
  readonly pulls: Int32Array;
  readonly pulledBy: Int32Array;
  /** Units of job j: from j · width on, in the order of its candidate's needs. */
  readonly units: Int32Array;
  /** The cost by which each unit was chosen from its pool; a unit with less would have been chosen instead. */
  readonly unitCost: Float64Array;
  /** 1 for a job whose first choice of units was in force throughout. */
  readonly isPlain: Uint8Array;
  readonly width: number;

  constructor(model: ScheduleModel) {
    const tasks = model.jobs + model.visits;
    this.width = Math.max(1, model.links);
    this.candidate = Int32Array.from({ length: tasks }, (_, task) =>
      task < model.jobs ? model.candidateAt[task]! : 0,
    );
    this.setupStart = new Int32Array(tasks);
    this.end = new Int32Array(tasks).fill(NEVER);
    this.cost = new Float64Array(tasks);
    this.pulls = new Int32Array(tasks);
    this.pulledBy = new Int32Array(tasks).fill(-1);
    this.units = new Int32Array(tasks * this.width);
    this.unitCost = new Float64Array(tasks * this.width);
    this.isPlain = new Uint8Array(tasks);
  }

  /** Takes over how one task lies in another schedule. */
  copy(task: number, other: Placements): void {
    this.candidate[task] = other.candidate[task]!;
    this.setupStart[task] = other.setupStart[task]!;
    this.end[task] = other.end[task]!;
    this.cost[task] = other.cost[task]!;
    this.isPlain[task] = other.isPlain[task]!;
    this.pulls[task] = other.pulls[task]!;
    this.pulledBy[task] = other.pulledBy[task]!;
    const from = task * this.width;
    for (let x = from; x < from + this.width; x++) {
      this.units[x] = other.units[x]!;
      this.unitCost[x] = other.unitCost[x]!;
    }
  }

  /** Whether a task lies alike in both; `needs` is how many units count. */
  isAlike(task: number, other: Placements, needs: number): boolean {
    if (this.candidate[task] !== other.candidate[task] || this.end[task] !== other.end[task]) return false;
    if (this.setupStart[task] !== other.setupStart[task]) return false;
    const from = task * this.width;
    for (let x = from; x < from + needs; x++) if (this.units[x] !== other.units[x]) return false;
    return true;
  }
}
