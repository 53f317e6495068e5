import type { MachineSequences } from './machine-sequences.js';

/** Lets blocks [i, j] and [g, h] of one machine change places (j < g). */
export function applySwap(s: MachineSequences, machine: number, i: number, j: number, g: number, h: number): void {
  const base = machine * s.stride;
  const was = s.seq.slice(base + i, base + h + 1);
  let x = base + i;
  for (let y = g; y <= h; y++) s.seq[x++] = was[y - i]!;
  for (let y = j + 1; y < g; y++) s.seq[x++] = was[y - i]!;
  for (let y = i; y <= j; y++) s.seq[x++] = was[y - i]!;
  s.refresh(machine, i);
}

/** Lets block [i, j] of a machine and block [g, h] of another change places; either may be empty (j = i − 1). */
export function applyExchange(
  s: MachineSequences,
  machine: number,
  i: number,
  j: number,
  other: number,
  g: number,
  h: number,
): void {
  const ours = s.seq.slice(machine * s.stride + i, machine * s.stride + j + 1);
  const theirs = s.seq.slice(other * s.stride + g, other * s.stride + h + 1);
  splice(s, machine, i, ours.length, theirs);
  splice(s, other, g, theirs.length, ours);
}

function splice(s: MachineSequences, machine: number, at: number, remove: number, put: Int32Array): void {
  const base = machine * s.stride;
  const length = s.length[machine]!;
  if (put.length !== remove) s.seq.copyWithin(base + at + put.length, base + at + remove, base + length + 1);
  s.seq.set(put, base + at);
  s.length[machine] = length - remove + put.length;
  s.refresh(machine, at);
}
