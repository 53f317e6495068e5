import type { Lanes } from './lanes.js';
import { shiftCost, shiftOfJob } from './price.js';

/**
 * Bounds of whole rows of moves inside one lane, for lanes without releases whose cost is tardiness and job ends. What a row
 * has in common is computed once. A move whose bound is below `gain` gets the exact price of its short block, which shifts
 * farthest and is bounded worst; only what is still below is handed to `found` to be priced exactly. `found` answers with
 * the gain that has to be beaten from then on.
 */
export type Found = (i: number, j: number, g: number, h: number) => number;

/** Block [i, j] goes behind each later place h. */
export function scanRight(s: Lanes, lane: number, i: number, j: number, gain: number, found: Found): void {
  const { end, family, span, late, rate, down, up } = s;
  const { setup, families, endRate } = s.model;
  const setupAt = s.model.setupAt[lane]!;
  const base = lane * s.stride;
  const last = base + s.length[lane]!;
  const a0 = base + i;
  const a1 = base + j;
  const b0 = a1 + 1;
  const firstA = family[a0]!;
  const fromA = setupAt + family[a1]! * families;
  const shiftB = end[a0 - 1]! + setup[setupAt + family[a0 - 1]! * families + family[b0]!]! + span[b0]! - end[b0]!;
  // All that is passed shifts alike, so its exact change only grows by one job a step.
  let costB = 0;
  const downA = down[a1]! - down[a0 - 1]!;
  const upA = up[a1]! - up[a0 - 1]!;
  const spanA = span[a0]! - end[a0]!;
  const endA = end[a1]!;
  const downAll = down[last]!;
  const upAll = up[last]!;
  for (let b1 = b0; b1 <= last; b1++) {
    const shiftA = end[b1]! + shiftB + setup[setupAt + family[b1]! * families + firstA]! + spanA;
    const shiftR = endA + shiftA + setup[fromA + family[b1 + 1]!]! + span[b1 + 1]! - end[b1 + 1]!;
    costB += endRate * shiftB + shiftOfJob(rate[b1]!, late[b1]!, shiftB);
    const boundA = shiftA * (shiftA < 0 ? downA : upA);
    const least = costB + boundA + shiftR * (shiftR < 0 ? downAll - down[b1]! : upAll - up[b1]!);
    if (least < gain && least - boundA + shiftCost(s, a0, a1, shiftA) < gain) gain = found(i, j, j + 1, b1 - base);
  }
}

/** Block [i, j] goes before each earlier place g. */
export function scanLeft(s: Lanes, lane: number, i: number, j: number, gain: number, found: Found): void {
  const { end, family, span, late, rate, down, up } = s;
  const { setup, families, endRate } = s.model;
  const setupAt = s.model.setupAt[lane]!;
  const base = lane * s.stride;
  const last = base + s.length[lane]!;
  const b0 = base + i;
  const b1 = base + j;
  const a1 = b0 - 1;
  const firstB = family[b0]!;
  const fromB = setupAt + family[b1]! * families;
  const spanB = span[b0]! - end[b0]!;
  const downB = down[b1]! - down[a1]!;
  const upB = up[b1]! - up[a1]!;
  const downA = down[a1]!;
  const upA = up[a1]!;
  const toRest = end[a1]! + setup[setupAt + family[a1]! * families + family[b1 + 1]!]! + span[b1 + 1]! - end[b1 + 1]!;
  const downR = down[last]! - down[b1]!;
  const upR = up[last]! - up[b1]!;
  // Without changeovers all that is passed shifts by the length of the block: then its exact change too grows by one job a step.
  const steady = families === 1;
  let costA = 0;
  for (let a0 = a1; a0 > base; a0--) {
    const shiftB = end[a0 - 1]! + setup[setupAt + family[a0 - 1]! * families + firstB]! + spanB;
    const shiftA = end[b1]! + shiftB + setup[fromB + family[a0]!]! + span[a0]! - end[a0]!;
    const shiftR = toRest + shiftA;
    const boundB = shiftB * (shiftB < 0 ? downB : upB);
    if (steady) costA += endRate * shiftA + shiftOfJob(rate[a0]!, late[a0]!, shiftA);
    else costA = shiftA * (shiftA < 0 ? downA - down[a0 - 1]! : upA - up[a0 - 1]!);
    const least = boundB + costA + shiftR * (shiftR < 0 ? downR : upR);
    if (least < gain && least - boundB + shiftCost(s, b0, b1, shiftB) < gain) gain = found(a0 - base, i - 1, i, j);
  }
}

/** Block [i, j] changes places with each block of `size` jobs that begins at g in [from, to], all right of it and not next to it. */
export function scanSwap(
  s: Lanes,
  lane: number,
  i: number,
  j: number,
  size: number,
  from: number,
  to: number,
  gain: number,
  found: Found,
): void {
  const { end, family, span, down, up } = s;
  const { setup, families } = s.model;
  const setupAt = s.model.setupAt[lane]!;
  const base = lane * s.stride;
  const last = base + s.length[lane]!;
  const a0 = base + i;
  const a1 = base + j;
  const m0 = a1 + 1;
  const before = setupAt + family[a0 - 1]! * families;
  const endBefore = end[a0 - 1]!;
  const firstA = family[a0]!;
  const fromA = setupAt + family[a1]! * families;
  const firstM = family[m0]!;
  const spanM = span[m0]! - end[m0]!;
  const spanA = span[a0]! - end[a0]!;
  const endA = end[a1]!;
  const downA = down[a1]! - down[a0 - 1]!;
  const upA = up[a1]! - up[a0 - 1]!;
  for (let b0 = base + from; b0 <= base + to; b0++) {
    const b1 = b0 + size - 1;
    const shiftB = endBefore + setup[before + family[b0]!]! + span[b0]! - end[b0]!;
    const shiftM = end[b1]! + shiftB + setup[setupAt + family[b1]! * families + firstM]! + spanM;
    const shiftA = end[b0 - 1]! + shiftM + setup[setupAt + family[b0 - 1]! * families + firstA]! + spanA;
    const shiftR = endA + shiftA + setup[fromA + family[b1 + 1]!]! + span[b1 + 1]! - end[b1 + 1]!;
    const boundA = shiftA * (shiftA < 0 ? downA : upA);
    const least =
      shiftB * (shiftB < 0 ? down[b1]! - down[b0 - 1]! : up[b1]! - up[b0 - 1]!) +
      shiftM * (shiftM < 0 ? down[b0 - 1]! - down[a1]! : up[b0 - 1]! - up[a1]!) +
      boundA +
      shiftR * (shiftR < 0 ? down[last]! - down[b1]! : up[last]! - up[b1]!);
    if (least < gain && least - boundA + shiftCost(s, a0, a1, shiftA) < gain) gain = found(i, j, b0 - base, b1 - base);
  }
}

/** Block [i, j] changes places with each block of `size` jobs that begins at g in [from, to], all left of it and not next to it. */
export function scanSwapLeft(
  s: Lanes,
  lane: number,
  i: number,
  j: number,
  size: number,
  from: number,
  to: number,
  gain: number,
  found: Found,
): void {
  const { end, family, span, down, up } = s;
  const { setup, families } = s.model;
  const setupAt = s.model.setupAt[lane]!;
  const base = lane * s.stride;
  const last = base + s.length[lane]!;
  const b0 = base + i;
  const b1 = base + j;
  const m1 = b0 - 1;
  const firstB = family[b0]!;
  const spanB = span[b0]! - end[b0]!;
  const fromB = setupAt + family[b1]! * families;
  const fromM = setupAt + family[m1]! * families;
  const afterB = family[b1 + 1]!;
  const spanR = span[b1 + 1]! - end[b1 + 1]!;
  const endB = end[b1]!;
  const endM = end[m1]!;
  const downB = down[b1]! - down[m1]!;
  const upB = up[b1]! - up[m1]!;
  const downM = down[m1]!;
  const upM = up[m1]!;
  const downR = down[last]! - down[b1]!;
  const upR = up[last]! - up[b1]!;
  for (let a0 = base + to; a0 >= base + from; a0--) {
    const a1 = a0 + size - 1;
    const shiftB = end[a0 - 1]! + setup[setupAt + family[a0 - 1]! * families + firstB]! + spanB;
    const shiftM = endB + shiftB + setup[fromB + family[a1 + 1]!]! + span[a1 + 1]! - end[a1 + 1]!;
    const shiftA = endM + shiftM + setup[fromM + family[a0]!]! + span[a0]! - end[a0]!;
    const shiftR = end[a1]! + shiftA + setup[setupAt + family[a1]! * families + afterB]! + spanR;
    const boundB = shiftB * (shiftB < 0 ? downB : upB);
    const least =
      boundB +
      shiftM * (shiftM < 0 ? downM - down[a1]! : upM - up[a1]!) +
      shiftA * (shiftA < 0 ? down[a1]! - down[a0 - 1]! : up[a1]! - up[a0 - 1]!) +
      shiftR * (shiftR < 0 ? downR : upR);
    if (least < gain && least - boundB + shiftCost(s, b0, b1, shiftB) < gain) gain = found(a0 - base, a1 - base, i, j);
  }
}

/** The job takes each place of a lane in turn: where one stands it is put before it (`size` 0), or instead of it (`size` 1). @returns the least bound */
export function scanPut(
  s: Lanes,
  lane: number,
  job: number,
  size: number,
  limit: number,
  found: (place: number) => number,
): number {
  let lowest = Infinity;
  const { seq, end, family, span, sum, down, up, waits, setupTo } = s;
  const { setup, families, familyOf, work, release, due, lateRate, endRate, setupRate, hasReleases, makespan } =
    s.model;
  const base = lane * s.stride;
  const last = base + s.length[lane]!;
  const row = s.model.setupAt[lane]! + familyOf[job]! * families;
  const workMin = work[lane * (s.model.jobs + 1) + job]!;
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
    const shift = (readyNext < releaseNext ? releaseNext : readyNext) + span[next]! - end[next]!;
    let least = (done > dueMin ? rate * (done - dueMin) : 0) + endRate * done - (sum[next - 1]! - sum[before]!);
    if (setupRate > 0) least += setupRate * (change + (next > last ? 0 : changeNext - changeAt(s, lane, next)));
    if (shift < 0) least += shift * (down[last]! - down[next - 1]!);
    else if (!hasReleases || waits[last] === waits[next]) least += shift * (up[last]! - up[next - 1]!);
    if (makespan)
      least += s.endCost(next > last ? done : endWas + (hasReleases && shift > 0 ? 0 : shift)) - s.endCost(endWas);
    if (least < lowest) lowest = least;
    if (least < limit) limit = found(place - base);
  }
  return lowest;
}

/** Changeover before the job at a place of the array, min. */
const changeAt = ({ family, model: { setup, setupAt, families } }: Lanes, lane: number, x: number): number =>
  setup[setupAt[lane]! + family[x - 1]! * families + family[x]!]!;
