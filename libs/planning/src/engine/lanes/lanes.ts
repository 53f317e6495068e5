import type { LaneModel } from './model.js';

/** The sequences of all lanes with everything that makes the price of a move quick to tell. */
export class Lanes {
  readonly stride: number;
  readonly seq: Int32Array;
  readonly length: Int32Array;
  /** Setup family of the job at each place. */
  readonly family: Int32Array;
  /** End of the job at each place, min. */
  readonly end: Int32Array;
  /** Working time less end, min: what to add to the minute at which a lane is ready for the job at a place to get the job's shift. */
  readonly lead: Int32Array;
  /** End less due date, min, the same where it is late and else 0, and cost per minute late, of the job at each place. */
  readonly late: Int32Array;
  readonly over: Int32Array;
  readonly rate: Float64Array;
  /** Minutes from the release of the job at each place to when its lane is ready for it; below 0 the lane waits. */
  readonly slack: Int32Array;
  /** Cost of all jobs up to and with each place. */
  readonly sum: Float64Array;
  /** Slope of the cost up to each place when everything shifts later; when it shifts earlier, no slope is steeper. */
  readonly up: Float64Array;
  /** How many jobs up to each place begin at their release with a wait before. */
  readonly waits: Int32Array;
  /** The model's changeovers read the other way: [setupAt + to · families + from], min. */
  readonly setupTo: Int32Array;
  readonly laneOf: Int32Array;
  readonly placeOf: Int32Array;
  readonly laneCost: Float64Array;
  /** A number for what each lane holds: while it is the same, so are the prices of moves into the lane. */
  readonly version: Int32Array;
  private versions = 0;
  cost = 0;

  constructor(readonly model: LaneModel) {
    const { lanes, jobs } = model;
    this.stride = jobs + 2;
    const size = lanes * this.stride;
    this.seq = new Int32Array(size).fill(jobs);
    this.length = new Int32Array(lanes);
    this.family = new Int32Array(size).fill(model.families - 1);
    this.end = new Int32Array(size);
    this.lead = new Int32Array(size);
    this.late = new Int32Array(size);
    this.over = new Int32Array(size);
    this.rate = new Float64Array(size);
    this.slack = new Int32Array(size);
    this.sum = new Float64Array(size);
    this.up = new Float64Array(size);
    this.waits = new Int32Array(size);
    this.setupTo = transposed(model);
    this.laneOf = new Int32Array(jobs + 1).fill(-1);
    this.placeOf = new Int32Array(jobs + 1);
    this.laneCost = new Float64Array(lanes);
    this.version = new Int32Array(lanes);
  }

  /**
   * Cost of a lane that ends at that minute, beyond what its jobs cost: the eighth power, steep enough that the longest lane
   * dominates, flat enough that the others still steer.
   */
  endCost(endMin: number): number {
    if (!this.model.makespan) return 0;
    const squared = (endMin / this.model.scaleMin) ** 2;
    const fourth = squared * squared;
    return fourth * fourth;
  }

  /** Recomputes a lane from a place on; places before it must not have changed. */
  refresh(lane: number, from: number): void {
    const { model, seq, family, end, lead, late, over, rate, slack, sum, up, waits } = this;
    const base = lane * this.stride;
    const workAt = lane * (model.jobs + 1);
    const setupAt = model.setupAt[lane]!;
    const { families, familyOf, setup, release, due, lateRate, endRate, setupRate, work } = model;
    const last = this.length[lane]!;
    seq[base] = model.jobs;
    seq[base + last + 1] = model.jobs;
    for (let x = base + from; x <= base + last; x++) {
      const job = seq[x]!;
      const kind = familyOf[job]!;
      const change = setup[setupAt + family[x - 1]! * families + kind]!;
      family[x] = kind;
      const ready = end[x - 1]! + change;
      const free = ready - release[job]!;
      const workMin = work[workAt + job]!;
      const done = (free < 0 ? release[job]! : ready) + workMin;
      const behind = done - due[job]!;
      const perMin = lateRate[job]!;
      end[x] = done;
      lead[x] = workMin - done;
      late[x] = behind;
      over[x] = behind > 0 ? behind : 0;
      rate[x] = perMin;
      slack[x] = free;
      sum[x] = sum[x - 1]! + perMin * over[x]! + endRate * done + setupRate * change;
      up[x] = up[x - 1]! + (behind >= 0 ? perMin : 0) + endRate;
      waits[x] = waits[x - 1]! + (free < 0 ? 1 : 0);
      this.laneOf[job] = lane;
      this.placeOf[job] = x - base;
    }
    this.version[lane] = ++this.versions;
    const tail = base + last + 1;
    family[tail] = families - 1;
    end[tail] = end[tail - 1]!;
    lead[tail] = -end[tail];
    sum[tail] = sum[tail - 1]!;
    up[tail] = up[tail - 1]!;
    waits[tail] = waits[tail - 1]!;
    const now = sum[tail - 1]! + this.endCost(end[tail - 1]!);
    this.cost += now - this.laneCost[lane]!;
    this.laneCost[lane] = now;
  }

  /** Puts the jobs into a lane, all at once. */
  setLane(lane: number, jobs: ArrayLike<number>): void {
    const base = lane * this.stride + 1;
    for (let x = 0; x < jobs.length; x++) this.seq[base + x] = jobs[x]!;
    this.length[lane] = jobs.length;
    this.refresh(lane, 1);
  }

  /** The cost summed anew, free of what rounding has added over many moves. */
  resum(): void {
    this.cost = this.laneCost.reduce((all, one) => all + one, 0);
  }

  makespanMin(): number {
    let most = 0;
    for (let lane = 0; lane < this.model.lanes; lane++) {
      most = Math.max(most, this.end[lane * this.stride + this.length[lane]!]!);
    }
    return most;
  }

  /** What the search compares: lane ends in makespan mode, else the cost. */
  value(): number {
    return this.model.makespan ? this.makespanMin() : this.cost;
  }
}

function transposed({ setup, families }: LaneModel): Int32Array {
  const to = new Int32Array(setup.length);
  const size = families * families;
  for (let at = 0; at < setup.length; at++) {
    const inMatrix = at % size;
    const from = Math.floor(inMatrix / families);
    to[at - inMatrix + (inMatrix % families) * families + from] = setup[at]!;
  }
  return to;
}
