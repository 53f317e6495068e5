import type { Builder } from './builder.js';
import type { ScheduleModel } from './model.js';
import type { Placements } from './placements.js';
import { NEVER } from './roster.js';

/**
 * Frames and units whose state differs from the current schedule, while an altered order is built. A job whose frame and
 * pools have not changed keeps its place, which need not be computed again.
 */
export class ChangedResources {
  private readonly frame: Int32Array;
  private readonly unit: Int32Array;
  private readonly pool: Int32Array;
  private readonly poolsOf: number[][];
  /** ChangedResources units of each pool. */
  private readonly unitsIn: Int32Array[];
  private readonly countIn: Int32Array;
  private stamp = 0;

  constructor(private readonly model: ScheduleModel) {
    this.frame = new Int32Array(model.frames);
    this.unit = new Int32Array(model.units);
    this.pool = new Int32Array(model.poolAt.length);
    this.countIn = new Int32Array(model.poolAt.length);
    this.unitsIn = Array.from(
      this.countIn,
      (_, pool) => new Int32Array(Math.max(0, (model.poolAt[pool + 1] ?? 0) - model.poolAt[pool]!)),
    );
    this.poolsOf = Array.from({ length: model.units }, () => []);
    for (let pool = 0; pool + 1 < model.poolAt.length; pool++) {
      for (let x = model.poolAt[pool]!; x < model.poolAt[pool + 1]!; x++) this.poolsOf[model.pool[x]!]!.push(pool);
    }
  }

  /** Nothing has changed yet. */
  begin(): void {
    this.stamp++;
  }

  /** Marks the frame and units on which a task lies in a schedule. */
  touch(task: number, { candidate, end, units, width, pulls, pulledBy }: Placements): void {
    const { model } = this;
    if (task >= model.jobs) return this.touchUnit(model.visitUnit[task - model.jobs]!);
    const c = candidate[task]!;
    this.touchPulled(task, { pulls, pulledBy });
    this.frame[model.candidateFrame[c]!] = this.stamp;
    if (end[task]! >= NEVER) return;
    const needs = model.needAt[c + 1]! - model.needAt[c]!;
    for (let x = 0; x < needs; x++) this.touchUnit(units[task * width + x]!);
  }

  /** Marks the units of the visits that were placed early because of a job; without it they lie elsewhere. */
  touchPulled(job: number, { pulls, pulledBy }: Pick<Placements, 'pulls' | 'pulledBy'>): void {
    const { model } = this;
    if (pulls[job] === 0) return;
    for (let visit = 0; visit < model.visits; visit++)
      if (pulledBy[model.jobs + visit] === job) this.touchUnit(model.visitUnit[visit]!);
  }

  /** Marks every unit that has a visit. */
  touchVisits(): void {
    for (let visit = 0; visit < this.model.visits; visit++) this.touchUnit(this.model.visitUnit[visit]!);
  }

  /**
   * Whether a task may have to move: its frame or one of its units has changed, or a changed unit of one of its pools is now
   * the better choice.
   */
  isTouched(task: number, candidate: number, settled: Placements, work: Builder): boolean {
    const { model, stamp } = this;
    if (task >= model.jobs) return this.unit[model.visitUnit[task - model.jobs]!] === stamp;
    const frame = model.candidateFrame[candidate]!;
    if (this.frame[frame] === stamp) return true;
    for (let n = model.needAt[candidate]!, x = task * settled.width; n < model.needAt[candidate + 1]!; n++, x++) {
      const pool = model.needPool[n]!;
      if (this.pool[pool] !== stamp) continue;
      if (!settled.isPlain[task] || this.unit[settled.units[x]!] === stamp) return true;
      if (this.hasBetter(pool, model.needLink[n]!, task, frame, settled.unitCost[x]!, work)) return true;
    }
    return false;
  }

  private hasBetter(
    pool: number,
    link: number,
    job: number,
    frame: number,
    cost: number,
    { fit, frameFree }: Builder,
  ): boolean {
    const units = this.unitsIn[pool]!;
    for (let x = 0; x < this.countIn[pool]!; x++) {
      if (fit.train.costOf(units[x]!, link, job, frame, frameFree[frame]!) <= cost) return true;
    }
    return false;
  }

  private touchUnit(unit: number): void {
    if (this.unit[unit] === this.stamp) return;
    this.unit[unit] = this.stamp;
    for (const pool of this.poolsOf[unit]!) {
      if (this.pool[pool] !== this.stamp) this.countIn[pool] = 0;
      this.pool[pool] = this.stamp;
      this.unitsIn[pool]![this.countIn[pool]!++] = unit;
    }
  }
}
