import { applyExchange, applySwap } from './apply.js';
import type { MachineSequences } from './machine-sequences.js';
import { priceReplace, priceSwap } from './price.js';
import { scanLeft, scanPut, scanRight, scanSwap, scanSwapLeft } from './scan.js';

/**
 * Longest block that is moved inside its sequence, with changeovers (which hold a block together) and without. In short
 * sequences it is no longer than this part of them.
 */
const LONGEST_WITHIN = 8;
const LONGEST_WITHOUT_CHANGEOVERS = 4;
const PART_OF_SEQUENCE = 0.4;
/** Longest blocks that are swapped inside a sequence: on one machine with changeovers, and otherwise. */
const LONGEST_SWAPPED = 3;
const LONGEST_SWAPPED_OTHERWISE = 2;
/** Longest tails of two sequences that are exchanged where the changeovers of the machines differ. */
const LONGEST_TAIL = 3;
/** A change smaller than this is rounding, not a gain. */
const LEAST_GAIN = 1e-7;

/** Local search with a work queue: a job whose best move gains nothing leaves the queue until one of its neighbours moves. */
export class Descent {
  evaluations = 0;
  private readonly queue: Int32Array;
  private readonly queued: Uint8Array;
  private head = 0;
  private waiting = 0;
  private gain = 0;
  /** Best move found: machine, i, j, other machine (−1 inside one machine), g, h. */
  private readonly move = new Int32Array(6);

  /** For each job and machine, twice (insertion, exchange): the machine's version, and a lower bound of the cost there. */
  private readonly known: Int32Array;
  private readonly leastPut: Float64Array;

  private machine = 0;
  private readonly longestWithin: number;
  private readonly longestSwapped: number;
  private readonly longestTail: number;
  /** Whether whole rows of moves inside a sequence can be bounded together (`scan.ts`). */
  private readonly scannable: boolean;
  private readonly found = (i: number, j: number, g: number, h: number): number => {
    const change = priceSwap(this.s, this.machine, i, j, g, h, this.gain);
    if (change < this.gain) this.keep(change, this.machine, i, j, -1, g, h);
    return this.gain;
  };

  constructor(private readonly s: MachineSequences) {
    const { hasReleases, makespan, setupRate, setupAt, families, jobs, machines } = s.model;
    const longest = families > 1 ? LONGEST_WITHIN : LONGEST_WITHOUT_CHANGEOVERS;
    this.longestWithin = Math.min(longest, Math.max(3, Math.round((PART_OF_SEQUENCE * jobs) / machines)));
    this.longestSwapped = machines === 1 && families > 1 ? LONGEST_SWAPPED : LONGEST_SWAPPED_OTHERWISE;
    this.longestTail = setupAt.every((at) => at === setupAt[0]) ? jobs : LONGEST_TAIL;
    this.scannable = !hasReleases && !makespan && setupRate === 0;
    this.queue = new Int32Array(s.model.jobs);
    this.known = new Int32Array(2 * jobs * machines);
    this.leastPut = new Float64Array(2 * jobs * machines);
    this.queued = new Uint8Array(s.model.jobs + 1);
  }

  push(job: number): void {
    if (job === this.s.model.jobs || this.queued[job]) return;
    this.queued[job] = 1;
    this.queue[(this.head + this.waiting++) % this.queue.length] = job;
  }

  pushAll(): void {
    for (let job = 0; job < this.s.model.jobs; job++) this.push(job);
  }

  /** Queues the jobs around places where neighbours changed. */
  pushAround(machine: number, from: number, to: number): void {
    const base = machine * this.s.stride;
    for (let x = Math.max(1, from - 1); x <= Math.min(this.s.length[machine]!, to + 1); x++)
      this.push(this.s.seq[base + x]!);
  }

  /** Queues the two jobs that are new neighbours at a place. Jobs that moved together with their neighbours gain little. */
  private pushJoint(machine: number, place: number): void {
    const at = machine * this.s.stride + place;
    if (place > 1) this.push(this.s.seq[at - 1]!);
    if (place <= this.s.length[machine]!) this.push(this.s.seq[at]!);
  }

  /**
   * Descends until the queue is empty or `stop` says so.
   *
   * @param isKnown whether the sequences are a local optimum that is known already; then the rest of the queue is dropped
   */
  run(stop: () => boolean, isKnown: () => boolean = () => false): void {
    while (this.waiting > 0) {
      const job = this.queue[this.head]!;
      this.head = (this.head + 1) % this.queue.length;
      this.waiting--;
      this.queued[job] = 0;
      if (this.improve(job)) {
        if (isKnown()) return this.clear();
        this.push(job);
      }
      if (stop()) return;
    }
  }

  clear(): void {
    this.queued.fill(0);
    this.waiting = 0;
  }

  private improve(job: number): boolean {
    this.gain = -LEAST_GAIN;
    const machine = this.s.machineOf[job]!;
    const i = this.s.placeOf[job]!;
    this.moveWithin(machine, i);
    this.swapWithin(machine, i);
    if (this.s.model.machines > 1) this.moveAcross(machine, i);
    if (this.gain >= -LEAST_GAIN) return false;
    this.apply();
    return true;
  }

  private tryWithin(machine: number, i: number, j: number, g: number, h: number): void {
    this.evaluations++;
    const change = priceSwap(this.s, machine, i, j, g, h, this.gain);
    if (change < this.gain) this.keep(change, machine, i, j, -1, g, h);
  }

  private keep(change: number, machine: number, i: number, j: number, other: number, g: number, h: number): void {
    this.gain = change;
    const { move } = this;
    move[0] = machine;
    move[1] = i;
    move[2] = j;
    move[3] = other;
    move[4] = g;
    move[5] = h;
  }

  private moveWithin(machine: number, i: number): void {
    for (let size = 1; size <= this.longestWithin; size++) {
      this.moveBlock(machine, i, i + size - 1);
      if (size > 1) this.moveBlock(machine, i - size + 1, i);
    }
  }

  private moveBlock(machine: number, i: number, j: number): void {
    const last = this.s.length[machine]!;
    if (i < 1 || j > last) return;
    if (this.scannable) {
      this.machine = machine;
      this.evaluations += last - (j - i) - 1;
      if (j < last) scanRight(this.s, machine, i, j, this.gain, this.found);
      if (i > 1) scanLeft(this.s, machine, i, j, this.gain, this.found);
      return;
    }
    for (let h = j + 1; h <= last; h++) this.tryWithin(machine, i, j, j + 1, h);
    for (let g = 1; g < i; g++) this.tryWithin(machine, g, i - 1, i, j);
  }

  private swapWithin(machine: number, i: number): void {
    for (let ours = 0; ours < this.longestSwapped; ours++) {
      for (let theirs = 0; theirs < this.longestSwapped; theirs++) this.swapBlock(machine, i, i + ours, theirs);
    }
  }

  /** Exchanges block [i, j] with every block of `more` + 1 jobs that is not next to it. */
  private swapBlock(machine: number, i: number, j: number, more: number): void {
    const last = this.s.length[machine]!;
    if (j > last) return;
    if (this.scannable) {
      this.machine = machine;
      this.evaluations += Math.max(0, last - more - j - 1);
      this.evaluations += Math.max(0, i - more - 2);
      if (j + 2 + more <= last) scanSwap(this.s, machine, i, j, more + 1, j + 2, last - more, this.gain, this.found);
      if (i - 2 - more >= 1) scanSwapLeft(this.s, machine, i, j, more + 1, 1, i - 2 - more, this.gain, this.found);
      return;
    }
    for (let g = j + 2; g + more <= last; g++) this.tryWithin(machine, i, j, g, g + more);
    for (let g = 1; g + more < i - 1; g++) this.tryWithin(machine, g, g + more, i, j);
  }

  private moveAcross(machine: number, i: number): void {
    const { s } = this;
    const saved = priceReplace(s, machine, i, i, machine, 1, 0, Infinity);
    for (let other = 0; other < s.model.machines; other++) {
      if (other === machine || !this.takes(other, machine, i, i)) continue;
      this.carryOver(other, machine, i, saved);
      this.exchangeTails(other, machine, i);
    }
  }

  private takes(machine: number, from: number, i: number, j: number): boolean {
    const { seq, stride, model } = this.s;
    for (let x = i; x <= j; x++)
      if (model.work[machine * (model.jobs + 1) + seq[from * stride + x]!]! < 0) return false;
    return true;
  }

  /** Moves the job at place i of a machine to another machine, or exchanges it with a job there. */
  private carryOver(other: number, machine: number, i: number, saved: number): void {
    const { s, known, leastPut } = this;
    const job = s.seq[machine * s.stride + i]!;
    const at = 2 * (job * s.model.machines + other);
    if (known[at] !== s.version[other] || leastPut[at]! < this.gain - saved) {
      known[at] = s.version[other]!;
      this.evaluations += s.length[other]! + 1;
      leastPut[at] = scanPut(s, other, job, 0, this.gain - saved, (q) => {
        const change = saved + priceReplace(s, other, q, q - 1, machine, i, i, this.gain - saved);
        if (change < this.gain) this.keep(change, machine, i, i, other, q, q - 1);
        return this.gain - saved;
      });
    }
    // What our machine saves by losing the job is about the most that it can save by an exchange.
    if (known[at + 1] !== s.version[other] || leastPut[at + 1]! < this.gain - saved) {
      known[at + 1] = s.version[other]!;
      this.evaluations += s.length[other]!;
      leastPut[at + 1] = scanPut(s, other, job, 1, this.gain - saved, (g) => {
        if (this.takes(machine, other, g, g)) this.tryExchange(other, machine, i, g, saved);
        return this.gain - saved;
      });
    }
  }

  private tryExchange(other: number, machine: number, i: number, g: number, saved: number): void {
    const theirs = priceReplace(this.s, other, g, g, machine, i, i, this.gain - saved);
    if (theirs === Infinity) return;
    const ours = priceReplace(this.s, machine, i, i, other, g, g, this.gain - theirs);
    if (theirs + ours < this.gain) this.keep(theirs + ours, machine, i, i, other, g, g);
  }

  private exchangeTails(other: number, machine: number, i: number): void {
    const { s } = this;
    const last = s.length[machine]!;
    const lastOther = s.length[other]!;
    if (last - i >= this.longestTail || !this.takes(other, machine, i, last)) return;
    for (let g = lastOther; g >= Math.max(1, lastOther - this.longestTail + 1); g--) {
      if (!this.takes(machine, other, g, g)) return;
      this.evaluations++;
      const saves = s.sum[other * s.stride + lastOther]! - s.sum[other * s.stride + g - 1]!;
      const ours = priceReplace(s, machine, i, last, other, g, lastOther, this.gain + saves);
      if (ours === Infinity) continue;
      const theirs = priceReplace(s, other, g, lastOther, machine, i, last, this.gain - ours);
      if (theirs + ours < this.gain) this.keep(theirs + ours, machine, i, last, other, g, lastOther);
    }
  }

  private apply(): void {
    const machine = this.move[0]!;
    const i = this.move[1]!;
    const j = this.move[2]!;
    const other = this.move[3]!;
    const g = this.move[4]!;
    const h = this.move[5]!;
    if (other < 0) {
      applySwap(this.s, machine, i, j, g, h);
      this.pushJoint(machine, i);
      this.pushJoint(machine, i + h - g + 1);
      this.pushJoint(machine, h - (j - i));
      this.pushJoint(machine, h + 1);
    } else {
      applyExchange(this.s, machine, i, j, other, g, h);
      this.pushAround(machine, i, i + Math.min(h - g, 3));
      this.pushAround(other, g, g + Math.min(j - i, 3));
    }
  }
}
