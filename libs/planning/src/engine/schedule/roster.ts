import type { ScheduleModel } from './model.js';

/** No such minute. */
export const NEVER = 0x3fffffff;

/** Free time of every technician in a partial schedule: sorted [start, end) pairs, one row for each. */
export class Roster {
  /** [technician · room + 2 · x], start and end of the x-th free stretch, after the count in `count`. */
  readonly free: Int32Array;
  readonly count: Int32Array;
  private readonly room: number;

  constructor(private readonly model: ScheduleModel) {
    const { technicians, shiftAt, jobs } = model;
    const most = Math.max(0, ...Array.from({ length: technicians }, (_, t) => shiftAt[t + 1]! - shiftAt[t]!));
    this.room = 2 * (most + Math.min(1000, 4 * jobs));
    this.free = new Int32Array(technicians * this.room);
    this.count = new Int32Array(technicians);
  }

  reset(): void {
    const { technicians, shiftAt, windows } = this.model;
    for (let t = 0; t < technicians; t++) {
      this.count[t] = shiftAt[t + 1]! - shiftAt[t]!;
      this.free.set(windows.subarray(2 * shiftAt[t]!, 2 * shiftAt[t + 1]!), t * this.room);
    }
  }

  copyFrom(other: Roster): void {
    for (let t = 0; t < this.count.length; t++) {
      const count = other.count[t]!;
      this.count[t] = count;
      const base = t * this.room;
      const { free } = this;
      for (let x = base; x < base + 2 * count; x++) free[x] = other.free[x]!;
    }
  }

  /** Earliest minute from `from` on, and before `before`, at which a technician has `length` minutes in a row free, or NEVER. */
  earliest(technician: number, from: number, length: number, before = NEVER): number {
    const base = technician * this.room;
    for (let x = this.firstAfter(technician, from); x < this.count[technician]!; x++) {
      const start = Math.max(from, this.free[base + 2 * x]!);
      if (start >= before) return NEVER;
      if (this.free[base + 2 * x + 1]! - start >= length) return start;
    }
    return NEVER;
  }

  /** Until when a technician who is free at that minute stays free. */
  freeUntil(technician: number, min: number): number {
    return this.free[technician * this.room + 2 * this.firstAfter(technician, min) + 1]!;
  }

  /** Takes [start, end), which must lie in one free stretch, away. */
  take(technician: number, start: number, end: number): void {
    const base = technician * this.room;
    const { free, count } = this;
    const x = this.firstAfter(technician, start);
    const at = base + 2 * x;
    const leftOver = free[at + 1]!;
    if (free[at]! === start) free[at] = end;
    else free[at + 1] = start;
    const splits = free[at]! !== end && end < leftOver;
    // Without room for another stretch the rest of this one is given up, which is safe but pessimistic.
    if (splits && 2 * count[technician]! + 2 <= this.room) {
      free.copyWithin(at + 4, at + 2, base + 2 * count[technician]!);
      free[at + 2] = end;
      free[at + 3] = leftOver;
      count[technician]!++;
    } else if (free[at]! >= free[at + 1]!) {
      free.copyWithin(at, at + 2, base + 2 * count[technician]!);
      count[technician]!--;
    }
  }

  /** First stretch that ends after `min`. */
  private firstAfter(technician: number, min: number): number {
    const base = technician * this.room;
    let low = 0;
    let high = this.count[technician]!;
    while (low < high) {
      const mid = (low + high) >> 1;
      if (this.free[base + 2 * mid + 1]! > min) high = mid;
      else low = mid + 1;
    }
    return low;
  }
}
