import type { MachineSequences } from './machine-sequences.js';

/**
 * Costs of moves. A move cuts a sequence into blocks, each of which shifts as a whole. The cost of a block is convex in its
 * shift, so its present slope times the shift is a lower bound of the change. This bound rejects most moves in O(1); only the
 * rest is summed job by job. With releases a shift may end in a wait, so the bound counts only what surely shifts.
 */

/** Least possible change of the cost of places [from, to] when the first shifts by `shift`. */
function bound(s: MachineSequences, from: number, to: number, shift: number): number {
  if (to < from) return 0;
  if (shift > 0 && s.model.hasReleases && s.waits[to]! !== s.waits[from]!)
    return s.model.endRate === 0 ? firstUp(s, from, shift) : 0;
  return shift * (s.up[to]! - s.up[from - 1]!);
}

const firstUp = (s: MachineSequences, from: number, shift: number): number => shift * (s.up[from]! - s.up[from - 1]!);

/** Exact change of the cost of places [from, to] when all shift by `shift` (no releases). */
export function shiftCost(s: MachineSequences, from: number, to: number, shift: number): number {
  if (to < from || shift === 0) return 0;
  const { late, rate } = s;
  let total = s.model.endRate * shift * (to - from + 1);
  for (let x = from; x <= to; x++) {
    const was = late[x]!;
    const is = was + shift;
    total += rate[x]! * ((is > 0 ? is : 0) - (was > 0 ? was : 0));
  }
  return total;
}

/** By how much the job after the last one that `ripple` looked at shifts, min. */
let carried = 0;

/**
 * Exact change of the cost of places [from, to] when the first shifts by `shift`: waits take up what comes later, releases stop
 * what comes earlier. Infinity once it is surely not below `limit`.
 */
function ripple(s: MachineSequences, from: number, to: number, shift: number, limit: number): number {
  const { late, rate, slack } = s;
  const { endRate } = s.model;
  let total = 0;
  for (let x = from; x <= to && shift !== 0; x++) {
    if (x > from) {
      const free = slack[x]!;
      if (shift > 0) shift = free < 0 ? Math.max(0, shift + free) : shift;
      else shift = free > 0 ? Math.max(shift, -free) : 0;
    }
    const was = late[x]!;
    const is = was + shift;
    total += rate[x]! * ((is > 0 ? is : 0) - (was > 0 ? was : 0)) + endRate * shift;
    if (shift > 0 && total >= limit) return Infinity;
  }
  carried = shift;
  return total;
}

/** Appends jobs one by one to a sequence and keeps its end and cost; on another machine times and changeovers differ. */
class Walker {
  endMin = 0;
  cost = 0;
  last = 0;
  private workAt = 0;
  private setupAt = 0;

  begin(s: MachineSequences, machine: number, place: number): void {
    this.workAt = machine * (s.model.jobs + 1);
    this.setupAt = s.model.setupAt[machine]!;
    this.endMin = s.end[place]!;
    this.last = s.seq[place]!;
    this.cost = 0;
  }

  /** Stops early, with a cost of Infinity, once the cost is `most`. */
  walk(s: MachineSequences, from: number, to: number, most: number): void {
    const { seq } = s;
    const { work, setup, families, familyOf, release, due, lateRate, endRate, setupRate } = s.model;
    let { endMin, cost, last } = this;
    for (let x = from; x <= to; x++) {
      const job = seq[x]!;
      const change = setup[this.setupAt + familyOf[last]! * families + familyOf[job]!]!;
      endMin += change;
      if (endMin < release[job]!) endMin = release[job]!;
      endMin += work[this.workAt + job]!;
      const late = endMin - due[job]!;
      if (late > 0) cost += lateRate[job]! * late;
      cost += endRate * endMin + setupRate * change;
      last = job;
      if (cost >= most) {
        cost = Infinity;
        break;
      }
    }
    this.endMin = endMin;
    this.cost = cost;
    this.last = last;
  }
}

const walker = new Walker();

/**
 * Change of the cost when blocks [i, j] and [g, h] of one machine change places (j < g; what lies between shifts).
 * @returns the exact change, or Infinity when it is surely not below `limit`
 */
export function priceSwap(
  s: MachineSequences,
  machine: number,
  i: number,
  j: number,
  g: number,
  h: number,
  limit: number,
): number {
  const { seq, end, model } = s;
  const { work, setup, families, familyOf, release, setupRate, hasReleases } = model;
  const base = machine * s.stride;
  const workAt = machine * (model.jobs + 1);
  const setupAt = model.setupAt[machine]!;
  const a0 = base + i;
  const a1 = base + j;
  const b0 = base + g;
  const b1 = base + h;
  const between = b0 - a1 > 1;
  const before = seq[a0 - 1]!;
  const firstA = seq[a0]!;
  const firstB = seq[b0]!;
  const after = seq[b1 + 1]!;
  const familyFirstA = familyOf[firstA]!;
  const familyLastA = familyOf[seq[a1]!]!;
  const familyFirstB = familyOf[firstB]!;
  const familyLastB = familyOf[seq[b1]!]!;
  const familyBefore = familyOf[before]!;
  const familyAfter = familyOf[after]!;
  const toB = setup[setupAt + familyBefore * families + familyFirstB]!;
  const toAfter = setup[setupAt + familyLastA * families + familyAfter]!;

  let start = end[a0 - 1]! + toB;
  if (hasReleases && start < release[firstB]!) start = release[firstB]!;
  const shiftB = start + work[workAt + firstB]! - end[b0]!;
  let least = bound(s, b0, b1, shiftB);
  let at = end[b1]! + (hasReleases && shiftB > 0 ? 0 : shiftB);
  let shiftM = 0;
  let toA: number;
  let toM = 0;
  if (between) {
    const firstM = seq[a1 + 1]!;
    toM = setup[setupAt + familyLastB * families + familyOf[firstM]!]!;
    start = at + toM;
    if (hasReleases && start < release[firstM]!) start = release[firstM]!;
    shiftM = start + work[workAt + firstM]! - end[a1 + 1]!;
    least += bound(s, a1 + 1, b0 - 1, shiftM);
    at = end[b0 - 1]! + (hasReleases && shiftM > 0 ? 0 : shiftM);
    toA = setup[setupAt + familyOf[seq[b0 - 1]!]! * families + familyFirstA]!;
  } else {
    toA = setup[setupAt + familyLastB * families + familyFirstA]!;
  }
  start = at + toA;
  if (hasReleases && start < release[firstA]!) start = release[firstA]!;
  const shiftA = start + work[workAt + firstA]! - end[a0]!;
  least += bound(s, a0, a1, shiftA);
  at = end[a1]! + (hasReleases && shiftA > 0 ? 0 : shiftA);
  const last = base + s.length[machine]!;
  start = at + toAfter;
  if (hasReleases && start < release[after]!) start = release[after]!;
  const shiftR = start + work[workAt + after]! - end[b1 + 1]!;
  least += bound(s, b1 + 1, last, shiftR);
  let setupChange = 0;
  if (setupRate > 0) {
    const had =
      setup[setupAt + familyBefore * families + familyFirstA]! + setup[setupAt + familyLastB * families + familyAfter]!;
    const join = between
      ? setup[setupAt + familyLastA * families + familyOf[seq[a1 + 1]!]!]! +
        setup[setupAt + familyOf[seq[b0 - 1]!]! * families + familyFirstB]!
      : setup[setupAt + familyLastA * families + familyFirstB]!;
    setupChange = setupRate * (toB + toM + toA + toAfter - had - join);
    least += setupChange;
  }
  const endWas = end[last]!;
  if (model.makespan) least += s.endCost(endWas + shiftR) - s.endCost(endWas);
  if (least >= limit) return Infinity;

  if (!hasReleases) {
    // Short blocks with long shifts first: their bound is the loosest.
    let exact = least - bound(s, a0, a1, shiftA) + shiftCost(s, a0, a1, shiftA);
    if (exact >= limit) return Infinity;
    exact += shiftCost(s, b0, b1, shiftB) - bound(s, b0, b1, shiftB);
    if (exact >= limit) return Infinity;
    if (between) exact += shiftCost(s, a1 + 1, b0 - 1, shiftM) - bound(s, a1 + 1, b0 - 1, shiftM);
    if (exact >= limit) return Infinity;
    exact += shiftCost(s, b1 + 1, last, shiftR) - bound(s, b1 + 1, last, shiftR);
    return exact < limit ? exact : Infinity;
  }
  // The shift that is left at the end of a block is the one with which the next block begins.
  let exact = setupRate > 0 ? setupChange : 0;
  exact += ripple(s, b0, b1, shiftB, Infinity);
  at = end[b1]! + carried;
  if (between) {
    const firstM = seq[a1 + 1]!;
    start = Math.max(at + toM, release[firstM]!);
    exact += ripple(s, a1 + 1, b0 - 1, start + work[workAt + firstM]! - end[a1 + 1]!, Infinity);
    at = end[b0 - 1]! + carried;
  }
  start = Math.max(at + toA, release[firstA]!);
  exact += ripple(s, a0, a1, start + work[workAt + firstA]! - end[a0]!, Infinity);
  at = end[a1]! + carried;
  start = Math.max(at + toAfter, release[after]!);
  exact += ripple(s, b1 + 1, last, start + work[workAt + after]! - end[b1 + 1]!, limit - exact);
  if (model.makespan) exact += s.endCost(b1 === last ? at : endWas + carried) - s.endCost(endWas);
  return exact < limit ? exact : Infinity;
}

/**
 * Change of one machine's cost when its block [i, j] (empty when j = i − 1) makes room for block [g, h] of another machine
 * (empty when h = g − 1). What the other machine saves is not counted.
 * @returns the exact change, or Infinity when it is surely not below `limit`
 */
export function priceReplace(
  s: MachineSequences,
  machine: number,
  i: number,
  j: number,
  from: number,
  g: number,
  h: number,
  limit: number,
): number {
  const { seq, end, sum, model } = s;
  const { work, setup, families, familyOf, release } = model;
  const base = machine * s.stride;
  const last = base + s.length[machine]!;
  const after = base + j + 1;
  const endWas = end[last]!;
  const removed = sum[after - 1]! - sum[base + i - 1]!;
  // Where nothing follows, nothing but the machine's end can make up for what the block costs.
  const most = after > last ? limit + removed + s.endCost(endWas) : Infinity;
  walker.begin(s, machine, base + i - 1);
  if (h >= g) walker.walk(s, from * s.stride + g, from * s.stride + h, most);
  const changed = walker.cost - removed;
  if (changed === Infinity) return Infinity;
  const next = seq[after]!;
  const change = setup[model.setupAt[machine]! + familyOf[walker.last]! * families + familyOf[next]!]!;
  let start = walker.endMin + change;
  if (start < release[next]!) start = release[next]!;
  const shift = start + work[machine * (model.jobs + 1) + next]! - end[after]!;
  let least = changed + bound(s, after, last, shift);
  if (model.makespan) {
    const endIs = after > last ? walker.endMin : endWas + (model.hasReleases && shift > 0 ? 0 : shift);
    least += s.endCost(endIs) - s.endCost(endWas);
  }
  const changeWas =
    after <= last ? setup[model.setupAt[machine]! + familyOf[seq[after - 1]!]! * families + familyOf[next]!]! : 0;
  if (after <= last) least += model.setupRate * (change - changeWas);
  if (least >= limit) return Infinity;
  if (!model.hasReleases) {
    const exact = least - bound(s, after, last, shift) + shiftCost(s, after, last, shift);
    return exact < limit ? exact : Infinity;
  }
  const setupChange = after <= last ? model.setupRate * (change - changeWas) : 0;
  const rest = ripple(s, after, last, shift, limit - changed - setupChange);
  const endIs = after > last ? walker.endMin : endWas + carried;
  const total = changed + setupChange + rest + (model.makespan ? s.endCost(endIs) - s.endCost(endWas) : 0);
  return total < limit ? total : Infinity;
}
