import type { SequenceModel } from './model.js';

/** The sequences of all machines, with the sums that make the cost of a move quick to compute. */
export class MachineSequences {
  readonly stride: number;
  readonly seq: Int32Array;
  readonly length: Int32Array;
  /** Setup family of the job at each place. */
  readonly family: Int32Array;
  /** End of the job at each place, min. */
  readonly end: Int32Array;
  /** Working time less end, min. Added to the minute at which the machine is ready for the job at a place, it gives the job's shift. */
  readonly lead: Int32Array;
  /** End less due date, min, the same where it is late and else 0, and cost per minute late, of the job at each place. */
  readonly late: Int32Array;
  readonly over: Int32Array;
  readonly rate: Float64Array;
  /** Minutes from the release of the job at each place to the minute at which its machine is ready; below 0 the machine waits. */
  readonly slack: Int32Array;
  /** Cost of all jobs up to and with each place. */
  readonly sum: Float64Array;
  /** Slope of the cost up to each place when everything shifts later. No slope towards earlier is steeper. */
  readonly up: Float64Array;
  /** How many jobs up to each place begin at their release after a wait. */
  readonly waits: Int32Array;
  /** The model's changeovers, transposed: [setupAt + to · families + from], min. */
  readonly setupTo: Int32Array;
  readonly machineOf: Int32Array;
  readonly placeOf: Int32Array;
  readonly machineCost: Float64Array;
  /** Changes whenever the sequence of a machine changes. While it is the same, so are the costs of moves into the machine. */
  readonly version: Int32Array;
  private versions = 0;
  cost = 0;

  constructor(readonly model: SequenceModel) {
    const { machines, jobs } = model;
    this.stride = jobs + 2;
    const size = machines * this.stride;
    this.seq = new Int32Array(size).fill(jobs);
    this.length = new Int32Array(machines);
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
    this.machineOf = new Int32Array(jobs + 1).fill(-1);
    this.placeOf = new Int32Array(jobs + 1);
    this.machineCost = new Float64Array(machines);
    this.version = new Int32Array(machines);
  }

  /**
   * Cost of a machine that ends at that minute, beyond what its jobs cost: the eighth power, steep enough that the longest machine
   * dominates, flat enough that the others still steer.
   */
  endCost(endMin: number): number {
    if (!this.model.makespan) return 0;
    const squared = (endMin / this.model.scaleMin) ** 2;
    const fourth = squared * squared;
    return fourth * fourth;
  }

  /** Recomputes a machine from a place on; places before it must not have changed. */
  refresh(machine: number, from: number): void {
    const { model, seq, family, end, lead, late, over, rate, slack, sum, up, waits } = this;
    const base = machine * this.stride;
    const workAt = machine * (model.jobs + 1);
    const setupAt = model.setupAt[machine]!;
    const { families, familyOf, setup, release, due, lateRate, endRate, setupRate, work } = model;
    const last = this.length[machine]!;
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
      this.machineOf[job] = machine;
      this.placeOf[job] = x - base;
    }
    this.version[machine] = ++this.versions;
    const tail = base + last + 1;
    family[tail] = families - 1;
    end[tail] = end[tail - 1]!;
    lead[tail] = -end[tail];
    sum[tail] = sum[tail - 1]!;
    up[tail] = up[tail - 1]!;
    waits[tail] = waits[tail - 1]!;
    const now = sum[tail - 1]! + this.endCost(end[tail - 1]!);
    this.cost += now - this.machineCost[machine]!;
    this.machineCost[machine] = now;
  }

  /** Replaces the whole sequence of a machine. */
  setSequence(machine: number, jobs: ArrayLike<number>): void {
    const base = machine * this.stride + 1;
    for (let x = 0; x < jobs.length; x++) this.seq[base + x] = jobs[x]!;
    this.length[machine] = jobs.length;
    this.refresh(machine, 1);
  }

  /** Sums the cost anew, so that rounding does not add up over many moves. */
  resum(): void {
    this.cost = this.machineCost.reduce((all, one) => all + one, 0);
  }

  makespanMin(): number {
    let most = 0;
    for (let machine = 0; machine < this.model.machines; machine++) {
      most = Math.max(most, this.end[machine * this.stride + this.length[machine]!]!);
    }
    return most;
  }

  /** What the search compares: the makespan in makespan mode, otherwise the cost. */
  value(): number {
    return this.model.makespan ? this.makespanMin() : this.cost;
  }
}

function transposed({ setup, families }: SequenceModel): Int32Array {
  const to = new Int32Array(setup.length);
  const size = families * families;
  for (let at = 0; at < setup.length; at++) {
    const inMatrix = at % size;
    const from = Math.floor(inMatrix / families);
    to[at - inMatrix + (inMatrix % families) * families + from] = setup[at]!;
  }
  return to;
}
