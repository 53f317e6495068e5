import type { Random } from '../random.js';
import type { Schedule } from './schedule.js';

/** So many tasks of two frames are redistributed; every split of them is compared. */
const MOST_TASKS = 10;

/**
 * Redistributes the tasks of two frames so that their working times are as equal as a split can make them; the order of the
 * tasks stays. It balances makespans that moves of single tasks cannot balance.
 */
export class SplitFrames {
  private readonly tasks = new Int32Array(MOST_TASKS);
  /** Candidates of each task on the one and on the other frame, and the one it had. */
  private readonly here = new Int32Array(MOST_TASKS);
  private readonly there = new Int32Array(MOST_TASKS);
  private readonly had = new Int32Array(MOST_TASKS);
  private readonly hereMin = new Int32Array(MOST_TASKS);
  private readonly thereMin = new Int32Array(MOST_TASKS);
  private count = 0;

  constructor(private readonly schedule: Schedule) {}

  /** @returns the first task that changed frames, −1 when none did; `undo` reverts it */
  redistribute(random: Random): number {
    const { model, candidate } = this.schedule;
    const longest = this.longestFrame(random);
    const other = (longest + 1 + random.below(model.frames - 1)) % model.frames;
    const difference = this.collect(longest, other, random);
    if (this.count < 2) return -1;
    const split = this.bestSplit(difference, random);
    let first = -1;
    for (let x = 0; x < this.count; x++) {
      const task = this.tasks[x]!;
      const is = split & (1 << x) ? this.there[x]! : this.here[x]!;
      if (is === this.had[x]!) continue;
      candidate[task] = is;
      if (first < 0 || this.schedule.putAt[task]! < this.schedule.putAt[first]!) first = task;
    }
    return first;
  }

  undo(): void {
    for (let x = 0; x < this.count; x++) this.schedule.candidate[this.tasks[x]!] = this.had[x]!;
  }

  /** The longer of two frames drawn at random. */
  private longestFrame(random: Random): number {
    const { model, frameEnd } = this.schedule;
    const a = random.below(model.frames);
    const b = random.below(model.frames);
    return frameEnd[a]! >= frameEnd[b]! ? a : b;
  }

  /** Collects tasks that could be on either. @returns how much more the first has to do by all that stays where it is, min */
  private collect(one: number, other: number, random: Random): number {
    const { model, candidate, order } = this.schedule;
    const shift = random.below(model.jobs);
    let difference = 0;
    this.count = 0;
    for (let x = 0; x < order.length; x++) {
      const task = order[(x + shift) % order.length]!;
      if (task >= model.jobs) continue;
      const c = candidate[task]!;
      const on = model.candidateFrame[c]!;
      if (on !== one && on !== other) continue;
      const here = on === one ? c : this.candidateOn(task, one);
      const there = on === other ? c : this.candidateOn(task, other);
      if (here < 0 || there < 0 || this.count === MOST_TASKS) {
        difference += on === one ? this.workMin(c) : -this.workMin(c);
        continue;
      }
      this.tasks[this.count] = task;
      this.hereMin[this.count] = this.workMin(here);
      this.thereMin[this.count] = this.workMin(there);
      this.here[this.count] = here;
      this.there[this.count] = there;
      this.had[this.count++] = c;
    }
    return difference;
  }

  private candidateOn(task: number, frame: number): number {
    const { model } = this.schedule;
    for (let c = model.candidateAt[task]!; c < model.candidateAt[task + 1]!; c++)
      if (model.candidateFrame[c] === frame) return c;
    return -1;
  }

  private workMin(c: number): number {
    return this.schedule.model.perSpecimen[c]! * this.schedule.model.specimens[c]!;
  }

  /** The split, as bits of who goes there, with the least difference; now and then one of the next best. */
  private bestSplit(difference: number, random: Random): number {
    const spread = random.below(4) * random.below(4);
    let best = 0;
    let least = Infinity;
    for (let split = 0; split < 1 << this.count; split++) {
      let sum = difference;
      for (let x = 0; x < this.count; x++) sum += split & (1 << x) ? -this.thereMin[x]! : this.hereMin[x]!;
      const off = Math.abs(Math.abs(sum) - spread) + random.unit();
      if (off < least) {
        least = off;
        best = split;
      }
    }
    return best;
  }
}
