import type { ScheduleModel } from './model.js';
import { NEVER } from './roster.js';
import type { Roster } from './roster.js';

/** Finds hours in which an authorised technician can work on a frame. */
export class Hours {
  /** The technician found last, who goes on while that costs no time; −1 when there is none. */
  by = -1;

  constructor(
    private readonly model: ScheduleModel,
    private readonly roster: Roster,
  ) {}

  /** Earliest start of `length` minutes inside working windows of the frame, with one technician throughout. */
  earliest(job: number, frame: number, from: number, length: number): number {
    const { model } = this;
    const lastBy = this.by;
    let at = from;
    for (;;) {
      this.by = lastBy;
      if (!model.frameAlways[frame]) at = this.openFrom(model.frameAt, frame, at, length);
      if (at >= NEVER || model.technicians === 0) return at;
      const free = this.somebodyFrom(job, at, length);
      if (free === at || free >= NEVER) return free;
      at = free;
    }
  }

  /** Until when work that begins at a minute, by the technician found last, can go on without a break. */
  goesOnUntil(frame: number, start: number): number {
    const { model } = this;
    let end = NEVER;
    if (!model.frameAlways[frame]) end = model.windows[2 * this.firstAfter(model.frameAt, frame, start) + 1]!;
    return model.technicians > 0 ? Math.min(end, this.roster.freeUntil(this.by, start)) : end;
  }

  /**
   * Start of a run that needs nobody: it goes on over closed hours, but begins while the frame is open, and does not overlap
   * a time in which the frame is down.
   */
  earliestAlone(frame: number, from: number, length: number): number {
    const { model } = this;
    if (model.frameAlways[frame]) return from;
    let at = from;
    for (;;) {
      const open = this.openFrom(model.frameAt, frame, at, 1);
      if (open >= NEVER) return NEVER;
      at = this.openFrom(model.runAt, frame, open, length);
      if (at === open || at >= NEVER) return at;
    }
  }

  /** −1 when the frame is not down at any time within [start, end); otherwise the minute from which it is up again. */
  afterDown(frame: number, start: number, end: number): number {
    const { frameAlways, runAt, windows } = this.model;
    if (frameAlways[frame]) return -1;
    const x = this.firstAfter(runAt, frame, start);
    const last = runAt[frame + 1]!;
    if (x === last) return NEVER;
    if (windows[2 * x]! > start) return windows[2 * x]!;
    if (end <= windows[2 * x + 1]!) return -1;
    return x + 1 < last ? windows[2 * x + 2]! : NEVER;
  }

  /** First minute from `from` on with `length` minutes inside one window of an owner, or NEVER. */
  private openFrom(owners: Int32Array, owner: number, from: number, length: number): number {
    const { windows } = this.model;
    const last = owners[owner + 1]!;
    for (let x = this.firstAfter(owners, owner, from); x < last; x++) {
      const start = Math.max(from, windows[2 * x]!);
      if (windows[2 * x + 1]! - start >= length) return start;
    }
    return NEVER;
  }

  /** First window of an owner that ends after a minute. */
  private firstAfter(owners: Int32Array, owner: number, min: number): number {
    const { windows } = this.model;
    let low = owners[owner]!;
    let high = owners[owner + 1]!;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (windows[2 * mid + 1]! > min) high = mid;
      else low = mid + 1;
    }
    return low;
  }

  /** Earliest minute at which an authorised technician is free. */
  private somebodyFrom(job: number, from: number, length: number): number {
    const { skillOf, skillAt, skilled } = this.model;
    let who = this.by;
    let best = who < 0 ? NEVER : this.roster.earliest(who, from, length);
    if (best === from) return from;
    const skill = skillOf[job]!;
    for (let x = skillAt[skill]!; x < skillAt[skill + 1]!; x++) {
      const t = skilled[x]!;
      const free = this.roster.earliest(t, from, length, best);
      if (free >= best) continue;
      best = free;
      who = t;
      if (free === from) break;
    }
    this.by = who;
    return best;
  }
}
