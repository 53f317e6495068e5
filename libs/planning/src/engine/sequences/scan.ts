import type { MachineSequences } from './machine-sequences.js';
import { shiftCost } from './price.js';

/**
 * Lower bounds for whole rows of moves inside one sequence, where there are no releases and the cost is tardiness and job ends.
 * What all moves of a row have in common is computed once. A move whose bound is below `gain` gets the exact cost of its short
 * block, which shifts farthest and has the loosest bound. If it is still below, `found` computes its exact cost and answers
 * with the gain to beat from then on.
 *
 * The search spends nearly all of its time in these inner loops. They call no functions, so that the compiler keeps the arrays
 * in registers, and branch only when a bound is good; `| 0` keeps whole minutes as integers.
 */
export type Found = (i: number, j: number, g: number, h: number) => number;

/** Block [i, j] goes behind each later place h. */
export function scanRight(
  s: MachineSequences,
  machine: number,
  i: number,
  j: number,
  gain: number,
  found: Found,
): void {
  const { end, family, lead, late, over, rate, up, setupTo } = s;
  const { setup, families, endRate } = s.model;
  const setupAt = s.model.setupAt[machine]!;
  const base = machine * s.stride;
  const last = base + s.length[machine]!;
  const a0 = base + i;
  const a1 = base + j;
  const b0 = a1 + 1;
  const toA = setupAt + family[a0]! * families;
  const fromA = setupAt + family[a1]! * families;
  const shiftB = end[a0 - 1]! + setup[setupAt + family[a0 - 1]! * families + family[b0]!]! + lead[b0]!;
  const endRateB = endRate * shiftB;
  const startA = shiftB + lead[a0]!;
  const endA = end[a1]!;
  const upA = up[a1]! - up[a0 - 1]!;
  const upAll = up[last]!;
  // All that is passed shifts alike, so its exact change only grows by one job a step.
  let costB = 0;
  let b1 = b0;
  for (;;) {
    let costRest = 0;
    let shiftA = 0;
    let next = family[b1]!;
    for (; b1 <= last; b1++) {
      shiftA = (end[b1]! + setupTo[toA + next]! + startA) | 0;
      next = family[b1 + 1]!;
      const shiftR = (endA + shiftA + setup[fromA + next]! + lead[b1 + 1]!) | 0;
      costB += endRateB + rate[b1]! * (positive(late[b1]! + shiftB) - over[b1]!);
      costRest = costB + shiftR * (upAll - up[b1]!);
      if (costRest + shiftA * upA < gain) break;
    }
    if (b1 > last) return;
    if (costRest + shiftCost(s, a0, a1, shiftA) < gain) gain = found(i, j, j + 1, b1 - base);
    b1++;
  }
}

/** Block [i, j] goes before each earlier place g. */
export function scanLeft(s: MachineSequences, machine: number, i: number, j: number, gain: number, found: Found): void {
  const { end, family, lead, late, over, rate, up, setupTo } = s;
  const { setup, families, endRate } = s.model;
  const setupAt = s.model.setupAt[machine]!;
  const base = machine * s.stride;
  const last = base + s.length[machine]!;
  const b0 = base + i;
  const b1 = base + j;
  const a1 = b0 - 1;
  const toB = setupAt + family[b0]! * families;
  const fromB = setupAt + family[b1]! * families;
  const leadB = lead[b0]!;
  const endB = end[b1]!;
  const upB = up[b1]! - up[a1]!;
  const upA = up[a1]!;
  const toRest = end[a1]! + setup[setupAt + family[a1]! * families + family[b1 + 1]!]! + lead[b1 + 1]!;
  const upR = up[last]! - up[b1]!;
  // Without changeovers all that is passed shifts by the length of the block: then its exact change too grows by one job a step.
  const steady = families === 1;
  let costA = 0;
  let a0 = a1;
  for (;;) {
    let costRest = 0;
    let shiftB = 0;
    let first = family[a0]!;
    for (; a0 > base; a0--) {
      const before = family[a0 - 1]!;
      shiftB = (end[a0 - 1]! + setupTo[toB + before]! + leadB) | 0;
      const shiftA = (endB + shiftB + setup[fromB + first]! + lead[a0]!) | 0;
      if (steady) costA += endRate * shiftA + rate[a0]! * (positive(late[a0]! + shiftA) - over[a0]!);
      else costA = shiftA * (upA - up[a0 - 1]!);
      costRest = costA + (toRest + shiftA) * upR;
      first = before;
      if (costRest + shiftB * upB < gain) break;
    }
    if (a0 <= base) return;
    if (costRest + shiftCost(s, b0, b1, shiftB) < gain) gain = found(a0 - base, i - 1, i, j);
    a0--;
  }
}

/** Block [i, j] changes places with each block of `size` jobs that begins at g in [from, to], all right of it and not next to it. */
export function scanSwap(
  s: MachineSequences,
  machine: number,
  i: number,
  j: number,
  size: number,
  from: number,
  to: number,
  gain: number,
  found: Found,
): void {
  const { end, family, lead, up, setupTo } = s;
  const { setup, families } = s.model;
  const setupAt = s.model.setupAt[machine]!;
  const base = machine * s.stride;
  const a0 = base + i;
  const a1 = base + j;
  const m0 = a1 + 1;
  const before = setupAt + family[a0 - 1]! * families;
  const endBefore = end[a0 - 1]!;
  const toA = setupAt + family[a0]! * families;
  const fromA = setupAt + family[a1]! * families;
  const toM = setupAt + family[m0]! * families;
  const leadM = lead[m0]!;
  const leadA = lead[a0]!;
  const endA = end[a1]!;
  const upTo = up[a1]!;
  const upA = upTo - up[a0 - 1]!;
  const upAll = up[base + s.length[machine]!]!;
  const most = base + to;
  let b0 = base + from;
  for (;;) {
    let costRest = 0;
    let shiftA = 0;
    for (; b0 <= most; b0++) {
      const b1 = b0 + size - 1;
      const shiftB = (endBefore + setup[before + family[b0]!]! + lead[b0]!) | 0;
      const shiftM = (end[b1]! + shiftB + setupTo[toM + family[b1]!]! + leadM) | 0;
      shiftA = (end[b0 - 1]! + shiftM + setupTo[toA + family[b0 - 1]!]! + leadA) | 0;
      const shiftR = (endA + shiftA + setup[fromA + family[b1 + 1]!]! + lead[b1 + 1]!) | 0;
      const upM = up[b0 - 1]!;
      const upB = up[b1]!;
      costRest = shiftB * (upB - upM) + shiftM * (upM - upTo) + shiftR * (upAll - upB);
      if (costRest + shiftA * upA < gain) break;
    }
    if (b0 > most) return;
    if (costRest + shiftCost(s, a0, a1, shiftA) < gain) gain = found(i, j, b0 - base, b0 + size - 1 - base);
    b0++;
  }
}

/** Block [i, j] changes places with each block of `size` jobs that begins at g in [from, to], all left of it and not next to it. */
export function scanSwapLeft(
  s: MachineSequences,
  machine: number,
  i: number,
  j: number,
  size: number,
  from: number,
  to: number,
  gain: number,
  found: Found,
): void {
  const { end, family, lead, up, setupTo } = s;
  const { setup, families } = s.model;
  const setupAt = s.model.setupAt[machine]!;
  const base = machine * s.stride;
  const b0 = base + i;
  const b1 = base + j;
  const m1 = b0 - 1;
  const toB = setupAt + family[b0]! * families;
  const fromB = setupAt + family[b1]! * families;
  const fromM = setupAt + family[m1]! * families;
  const toR = setupAt + family[b1 + 1]! * families;
  const leadB = lead[b0]!;
  const leadR = lead[b1 + 1]!;
  const endB = end[b1]!;
  const endM = end[m1]!;
  const upM = up[m1]!;
  const upB = up[b1]! - upM;
  const upR = up[base + s.length[machine]!]! - up[b1]!;
  const least = base + from;
  let a0 = base + to;
  for (;;) {
    let costRest = 0;
    let shiftB = 0;
    for (; a0 >= least; a0--) {
      const a1 = a0 + size - 1;
      shiftB = (end[a0 - 1]! + setupTo[toB + family[a0 - 1]!]! + leadB) | 0;
      const shiftM = (endB + shiftB + setup[fromB + family[a1 + 1]!]! + lead[a1 + 1]!) | 0;
      const shiftA = (endM + shiftM + setup[fromM + family[a0]!]! + lead[a0]!) | 0;
      const shiftR = (end[a1]! + shiftA + setupTo[toR + family[a1]!]! + leadR) | 0;
      const upA = up[a1]!;
      costRest = shiftM * (upM - upA) + shiftA * (upA - up[a0 - 1]!) + shiftR * upR;
      if (costRest + shiftB * upB < gain) break;
    }
    if (a0 < least) return;
    if (costRest + shiftCost(s, b0, b1, shiftB) < gain) gain = found(a0 - base, a0 + size - 1 - base, i, j);
    a0--;
  }
}

/** The larger of a whole number and 0, without a branch that nobody can foretell. */
const positive = (min: number): number => min & ~(min >> 31);

/** The job takes each place of a machine in turn: where one stands it is put before it (`size` 0), or instead of it (`size` 1). @returns the least bound */
export function scanPut(
  s: MachineSequences,
  machine: number,
  job: number,
  size: number,
  limit: number,
  found: (place: number) => number,
): number {
  let lowest = Infinity;
  const { seq, end, family, lead, sum, up, waits, setupTo } = s;
  const { setup, families, familyOf, work, release, due, lateRate, endRate, setupRate, hasReleases, makespan } =
    s.model;
  const base = machine * s.stride;
  const last = base + s.length[machine]!;
  const row = s.model.setupAt[machine]! + familyOf[job]! * families;
  const workMin = work[machine * (s.model.jobs + 1) + job]!;
  const releaseMin = release[job]!;
  const dueMin = due[job]!;
  const rate = lateRate[job]!;
  const endWas = end[last]!;
  const lastPut = last + 1 - size;
  for (let place = base + 1; place <= lastPut; place++) {
    const before = place - 1;
    const next = place + size;
    const change = setupTo[row + family[before]!]!;
    const ready = end[before]! + change;
    const done = (ready < releaseMin ? releaseMin : ready) + workMin;
    const changeNext = setup[row + family[next]!]!;
    const readyNext = done + changeNext;
    const releaseNext = release[seq[next]!]!;
    const shift = (readyNext < releaseNext ? releaseNext : readyNext) + lead[next]!;
    let least = (done > dueMin ? rate * (done - dueMin) : 0) + endRate * done - (sum[next - 1]! - sum[before]!);
    if (setupRate > 0) least += setupRate * (change + (next > last ? 0 : changeNext - changeAt(s, machine, next)));
    if (shift < 0 || !hasReleases || waits[last] === waits[next]) least += shift * (up[last]! - up[next - 1]!);
    if (makespan)
      least += s.endCost(next > last ? done : endWas + (hasReleases && shift > 0 ? 0 : shift)) - s.endCost(endWas);
    if (least < lowest) lowest = least;
    if (least < limit) limit = found(place - base);
  }
  return lowest;
}

/** Changeover before the job at a place of the array, min. */
const changeAt = (
  { family, model: { setup, setupAt, families } }: MachineSequences,
  machine: number,
  x: number,
): number => setup[setupAt[machine]! + family[x - 1]! * families + family[x]!]!;
