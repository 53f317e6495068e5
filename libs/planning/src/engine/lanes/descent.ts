import { applyExchange, applySwap } from './apply.js';
import type { Lanes } from './lanes.js';
import { priceReplace, priceSwap } from './price.js';
import { scanLeft, scanPut, scanRight, scanSwap, scanSwapLeft } from './scan.js';

/**
 * How long a block may be that is moved inside its lane, with changeovers and without: it is they that hold a block together. In
 * short lanes it is no longer than this part of them.
 */
const LONGEST_WITHIN = 8;
const LONGEST_WITHOUT_CHANGEOVERS = 4;
const PART_OF_LANE = 0.4;
/** How long blocks are that change places inside a lane: in one lane with changeovers, and otherwise. */
const LONGEST_SWAPPED = 3;
const LONGEST_SWAPPED_OTHERWISE = 2;
/** How many jobs the ends of two lanes may have that change places where changeovers differ: longer ones lose what they have in common. */
const LONGEST_TAIL = 3;
/** A change smaller than this is rounding, not a gain. */
const LEAST_GAIN = 1e-7;

/** Local search: jobs wait in a queue to be looked at; a job whose best move gains nothing leaves it until a neighbour moves. */
export class Descent {
  evaluations = 0;
  private readonly queue: Int32Array;
  private readonly queued: Uint8Array;
  private head = 0;
  private waiting = 0;
  private gain = 0;
  /** Best move found: lane, i, j, other lane (−1 inside one lane), g, h. */
  private readonly move = new Int32Array(6);

  /** For each job and lane, twice: the lane's version, and the least that it can cost to put the job into it, or for another. */
  private readonly known: Int32Array;
  private readonly leastPut: Float64Array;

  private lane = 0;
  private readonly longestWithin: number;
  private readonly longestSwapped: number;
  private readonly longestTail: number;
  /** Whether rows of moves inside a lane can be bounded together. */
  private readonly scannable: boolean;
  private readonly found = (i: number, j: number, g: number, h: number): number => {
    const change = priceSwap(this.s, this.lane, i, j, g, h, this.gain);
    if (change < this.gain) this.keep(change, this.lane, i, j, -1, g, h);
    return this.gain;
  };

  constructor(private readonly s: Lanes) {
    const { hasReleases, makespan, setupRate, setupAt, families, jobs, lanes } = s.model;
    const longest = families > 1 ? LONGEST_WITHIN : LONGEST_WITHOUT_CHANGEOVERS;
    this.longestWithin = Math.min(longest, Math.max(3, Math.round((PART_OF_LANE * jobs) / lanes)));
    this.longestSwapped = lanes === 1 && families > 1 ? LONGEST_SWAPPED : LONGEST_SWAPPED_OTHERWISE;
    this.longestTail = setupAt.every((at) => at === setupAt[0]) ? jobs : LONGEST_TAIL;
    this.scannable = !hasReleases && !makespan && setupRate === 0;
    this.queue = new Int32Array(s.model.jobs);
    this.known = new Int32Array(2 * jobs * lanes);
    this.leastPut = new Float64Array(2 * jobs * lanes);
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

  /** Queues the jobs around the places of a lane where neighbours changed. */
  pushAround(lane: number, from: number, to: number): void {
    const base = lane * this.s.stride;
    for (let x = Math.max(1, from - 1); x <= Math.min(this.s.length[lane]!, to + 1); x++)
      this.push(this.s.seq[base + x]!);
  }

  /** Queues the two jobs that now follow each other at a place: what moved along with its neighbours has little new to find. */
  private pushJoint(lane: number, place: number): void {
    const at = lane * this.s.stride + place;
    if (place > 1) this.push(this.s.seq[at - 1]!);
    if (place <= this.s.length[lane]!) this.push(this.s.seq[at]!);
  }

  /**
   * Goes downhill until the queue is empty or `stop` says so.
   *
   * @param isKnown whether the lanes stand where nothing was left to gain before: then the rest of the queue has nothing to find
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
    const lane = this.s.laneOf[job]!;
    const i = this.s.placeOf[job]!;
    this.moveWithin(lane, i);
    this.swapWithin(lane, i);
    if (this.s.model.lanes > 1) this.moveAcross(lane, i);
    if (this.gain >= -LEAST_GAIN) return false;
    this.apply();
    return true;
  }

  private tryWithin(lane: number, i: number, j: number, g: number, h: number): void {
    this.evaluations++;
    const change = priceSwap(this.s, lane, i, j, g, h, this.gain);
    if (change < this.gain) this.keep(change, lane, i, j, -1, g, h);
  }

  private keep(change: number, lane: number, i: number, j: number, other: number, g: number, h: number): void {
    this.gain = change;
    const { move } = this;
    move[0] = lane;
    move[1] = i;
    move[2] = j;
    move[3] = other;
    move[4] = g;
    move[5] = h;
  }

  private moveWithin(lane: number, i: number): void {
    for (let size = 1; size <= this.longestWithin; size++) {
      this.moveBlock(lane, i, i + size - 1);
      if (size > 1) this.moveBlock(lane, i - size + 1, i);
    }
  }

  private moveBlock(lane: number, i: number, j: number): void {
    const last = this.s.length[lane]!;
    if (i < 1 || j > last) return;
    if (this.scannable) {
      this.lane = lane;
      this.evaluations += last - (j - i) - 1;
      if (j < last) scanRight(this.s, lane, i, j, this.gain, this.found);
      if (i > 1) scanLeft(this.s, lane, i, j, this.gain, this.found);
      return;
    }
    for (let h = j + 1; h <= last; h++) this.tryWithin(lane, i, j, j + 1, h);
    for (let g = 1; g < i; g++) this.tryWithin(lane, g, i - 1, i, j);
  }

  private swapWithin(lane: number, i: number): void {
    for (let ours = 0; ours < this.longestSwapped; ours++) {
      for (let theirs = 0; theirs < this.longestSwapped; theirs++) this.swapBlock(lane, i, i + ours, theirs);
    }
  }

  /** Exchanges block [i, j] with every block of `more` + 1 jobs that is not next to it. */
  private swapBlock(lane: number, i: number, j: number, more: number): void {
    const last = this.s.length[lane]!;
    if (j > last) return;
    if (this.scannable) {
      this.lane = lane;
      this.evaluations += Math.max(0, last - more - j - 1);
      this.evaluations += Math.max(0, i - more - 2);
      if (j + 2 + more <= last) scanSwap(this.s, lane, i, j, more + 1, j + 2, last - more, this.gain, this.found);
      if (i - 2 - more >= 1) scanSwapLeft(this.s, lane, i, j, more + 1, 1, i - 2 - more, this.gain, this.found);
      return;
    }
    for (let g = j + 2; g + more <= last; g++) this.tryWithin(lane, i, j, g, g + more);
    for (let g = 1; g + more < i - 1; g++) this.tryWithin(lane, g, g + more, i, j);
  }

  private moveAcross(lane: number, i: number): void {
    const { s } = this;
    const saved = priceReplace(s, lane, i, i, lane, 1, 0, Infinity);
    for (let other = 0; other < s.model.lanes; other++) {
      if (other === lane || !this.takes(other, lane, i, i)) continue;
      this.carryOver(other, lane, i, saved);
      this.exchangeTails(other, lane, i);
    }
  }

  private takes(lane: number, from: number, i: number, j: number): boolean {
    const { seq, stride, model } = this.s;
    for (let x = i; x <= j; x++) if (model.work[lane * (model.jobs + 1) + seq[from * stride + x]!]! < 0) return false;
    return true;
  }

  /** Puts the job at place i of a lane into another, or lets it change places with one there. */
  private carryOver(other: number, lane: number, i: number, saved: number): void {
    const { s, known, leastPut } = this;
    const job = s.seq[lane * s.stride + i]!;
    const at = 2 * (job * s.model.lanes + other);
    if (known[at] !== s.version[other] || leastPut[at]! < this.gain - saved) {
      known[at] = s.version[other]!;
      this.evaluations += s.length[other]! + 1;
      leastPut[at] = scanPut(s, other, job, 0, this.gain - saved, (q) => {
        const change = saved + priceReplace(s, other, q, q - 1, lane, i, i, this.gain - saved);
        if (change < this.gain) this.keep(change, lane, i, i, other, q, q - 1);
        return this.gain - saved;
      });
    }
    // What our lane saves by losing the job is about the most that it can save by getting another for it.
    if (known[at + 1] !== s.version[other] || leastPut[at + 1]! < this.gain - saved) {
      known[at + 1] = s.version[other]!;
      this.evaluations += s.length[other]!;
      leastPut[at + 1] = scanPut(s, other, job, 1, this.gain - saved, (g) => {
        if (this.takes(lane, other, g, g)) this.tryExchange(other, lane, i, g, saved);
        return this.gain - saved;
      });
    }
  }

  private tryExchange(other: number, lane: number, i: number, g: number, saved: number): void {
    const theirs = priceReplace(this.s, other, g, g, lane, i, i, this.gain - saved);
    if (theirs === Infinity) return;
    const ours = priceReplace(this.s, lane, i, i, other, g, g, this.gain - theirs);
    if (theirs + ours < this.gain) this.keep(theirs + ours, lane, i, i, other, g, g);
  }

  private exchangeTails(other: number, lane: number, i: number): void {
    const { s } = this;
    const last = s.length[lane]!;
    const lastOther = s.length[other]!;
    if (last - i >= this.longestTail || !this.takes(other, lane, i, last)) return;
    for (let g = lastOther; g >= Math.max(1, lastOther - this.longestTail + 1); g--) {
      if (!this.takes(lane, other, g, g)) return;
      this.evaluations++;
      const saves = s.sum[other * s.stride + lastOther]! - s.sum[other * s.stride + g - 1]!;
      const ours = priceReplace(s, lane, i, last, other, g, lastOther, this.gain + saves);
      if (ours === Infinity) continue;
      const theirs = priceReplace(s, other, g, lastOther, lane, i, last, this.gain - ours);
      if (theirs + ours < this.gain) this.keep(theirs + ours, lane, i, last, other, g, lastOther);
    }
  }

  private apply(): void {
    const [lane, i, j, other, g, h] = this.move as unknown as [number, number, number, number, number, number];
    if (other < 0) {
      applySwap(this.s, lane, i, j, g, h);
      this.pushJoint(lane, i);
      this.pushJoint(lane, i + h - g + 1);
      this.pushJoint(lane, h - (j - i));
      this.pushJoint(lane, h + 1);
    } else {
      applyExchange(this.s, lane, i, j, other, g, h);
      this.pushAround(lane, i, i + Math.min(h - g, 3));
      this.pushAround(other, g, g + Math.min(j - i, 3));
    }
  }
}
