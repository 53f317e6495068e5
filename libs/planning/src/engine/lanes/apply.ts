import type { Lanes } from './lanes.js';

/** Lets blocks [i, j] and [g, h] of one lane change places (j < g). */
export function applySwap(s: Lanes, lane: number, i: number, j: number, g: number, h: number): void {
  const base = lane * s.stride;
  const was = s.seq.slice(base + i, base + h + 1);
  let x = base + i;
  for (let y = g; y <= h; y++) s.seq[x++] = was[y - i]!;
  for (let y = j + 1; y < g; y++) s.seq[x++] = was[y - i]!;
  for (let y = i; y <= j; y++) s.seq[x++] = was[y - i]!;
  s.refresh(lane, i);
}

/** Lets block [i, j] of a lane and block [g, h] of another change places; either may be empty (j = i − 1). */
export function applyExchange(s: Lanes, lane: number, i: number, j: number, other: number, g: number, h: number): void {
  const ours = s.seq.slice(lane * s.stride + i, lane * s.stride + j + 1);
  const theirs = s.seq.slice(other * s.stride + g, other * s.stride + h + 1);
  splice(s, lane, i, ours.length, theirs);
  splice(s, other, g, theirs.length, ours);
}

function splice(s: Lanes, lane: number, at: number, remove: number, put: Int32Array): void {
  const base = lane * s.stride;
  const length = s.length[lane]!;
  if (put.length !== remove) s.seq.copyWithin(base + at + put.length, base + at + remove, base + length + 1);
  s.seq.set(put, base + at);
  s.length[lane] = length - remove + put.length;
  s.refresh(lane, at);
}
