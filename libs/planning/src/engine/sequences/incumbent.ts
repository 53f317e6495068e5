import type { MachineSequences } from './machine-sequences.js';

/** Sums of the same costs in another order differ by less. */
const ROUNDING = 1e-6;

/** The accepted solution, from which each perturbation starts. */
export class Incumbent {
  cost = Infinity;
  private readonly seq: Int32Array;
  private readonly length: Int32Array;
  private readonly version: Int32Array;

  constructor(private readonly s: MachineSequences) {
    this.seq = new Int32Array(s.seq.length);
    this.length = new Int32Array(s.length.length);
    this.version = new Int32Array(s.length.length);
  }

  save(): void {
    this.seq.set(this.s.seq);
    this.length.set(this.s.length);
    this.version.set(this.s.version);
    this.cost = this.s.cost;
  }

  /** Whether the sequences are those of the incumbent: the descent undoes many a perturbation. */
  isReached(): boolean {
    const { s } = this;
    if (Math.abs(s.cost - this.cost) > ROUNDING) return false;
    for (let machine = 0; machine < s.model.machines; machine++)
      if (s.version[machine] !== this.version[machine] && this.firstDifference(machine) >= 0) return false;
    return true;
  }

  restore(): void {
    const { s } = this;
    for (let machine = 0; machine < s.model.machines; machine++) {
      const from = this.firstDifference(machine);
      if (from < 0) continue;
      const base = machine * s.stride;
      s.seq.set(this.seq.subarray(base, base + this.length[machine]! + 2), base);
      s.length[machine] = this.length[machine]!;
      s.refresh(machine, from);
      s.version[machine] = this.version[machine]!;
    }
  }

  /** First place of a machine at which the sequence differs from the incumbent's; −1 when there is none. */
  private firstDifference(machine: number): number {
    const { s } = this;
    const base = machine * s.stride;
    const length = this.length[machine]!;
    for (let x = 1; x <= length + 1; x++) if (s.seq[base + x] !== this.seq[base + x]) return x;
    return s.length[machine] === length ? -1 : length + 1;
  }
}
