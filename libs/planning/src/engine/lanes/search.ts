import type { Budget } from '../budget.js';
import type { Random } from '../random.js';
import { Descent } from './descent.js';
import { dispatch, RULE_GRID } from './dispatch.js';
import { kick } from './kick.js';
import { Lanes } from './lanes.js';
import type { LaneModel } from './model.js';

export interface LaneResult {
  lanes: number[][];
  value: number;
}

/** Iterated local search: kick, go downhill, keep what is better or, while it is warm, a little worse. */
export function searchLanes(
  model: LaneModel,
  budget: Budget,
  random: Random,
  onBetter: (result: LaneResult, evaluations: number) => void,
): LaneResult {
  const s = new Lanes(model);
  const descent = new Descent(s);
  load(s, bestDispatch(model, budget));
  let best = takeOut(s);
  onBetter(best, descent.evaluations);
  const stop = (): boolean => budget.isSpent();
  const better = (): void => {
    if (s.value() >= best.value) return;
    best = takeOut(s);
    onBetter(best, descent.evaluations);
  };
  for (let job = 0; job < model.jobs; job++) descent.push(job);
  descent.run(stop);
  better();
  const kept = new Kept(s);
  kept.save();
  const warmth = new Warmth(model.lanes > 1 ? SEVERAL_LANES : ONE_LANE);
  while (!budget.isSpent() && best.value > 0) {
    budget.rounds++;
    if (budget.rounds % 1000 === 0) s.resum();
    kick(s, descent, random);
    descent.run(stop);
    better();
    if (warmth.accepts(s.cost - kept.cost, kept.cost, random)) kept.save();
    else kept.restore();
    if (warmth.isOver()) {
      load(s, best.lanes);
      shake(s, descent, random, warmth.staleAfter(best.value));
      descent.run(stop);
      better();
      kept.save();
    }
  }
  budget.evaluations = descent.evaluations;
  return best;
}

/** Kicks many places at once, so that the next phase begins elsewhere; harder the longer nothing better was found. */
function shake(s: Lanes, descent: Descent, random: Random, stale: number): void {
  const times = stale * Math.ceil(s.model.jobs * SHAKEN);
  for (let n = 0; n < times; n++) kick(s, descent, random);
}

/** Share of the jobs that a shake kicks. */
const SHAKEN = 1 / 3;
/** Kicks in the first phase. */
const FIRST_PHASE = 400;
/**
 * `heat`: this share of the cost may be added at the start of a phase with a chance of 1/e. `growth`: how much longer each
 * phase is than the one before. Between several lanes the valleys are deeper: a job must leave one lane before it pays in
 * another, so there it is warmer and cools for longer. Both were set by trials.
 */
const ONE_LANE = { heat: 0.008, growth: 1.3 };
const SEVERAL_LANES = { heat: 0.02, growth: 1.6 };

/** Cools from warm to cold over a phase; each phase is longer than the last, so that no length has to be known beforehand. */
class Warmth {
  private round = 0;
  private phase = FIRST_PHASE;
  private stale = 0;
  private least = Infinity;

  constructor(private readonly course: { heat: number; growth: number }) {}

  accepts(change: number, cost: number, random: Random): boolean {
    this.round++;
    if (change <= 0) return true;
    const heat = this.course.heat * cost * (1 - this.round / this.phase) ** 2;
    return change < -heat * Math.log(random.unit() + 1e-12);
  }

  /** @returns how many phases in a row found nothing better than the best value before them */
  staleAfter(value: number): number {
    this.stale = value < this.least ? 0 : this.stale + 1;
    this.least = Math.min(this.least, value);
    return this.stale;
  }

  isOver(): boolean {
    if (this.round < this.phase) return false;
    this.round = 0;
    this.phase = Math.floor(this.phase * this.course.growth);
    return true;
  }
}

function bestDispatch(model: LaneModel, budget: Budget): number[][] {
  const trial = new Lanes(model);
  let best: number[][] = [];
  let least = Infinity;
  for (const rule of RULE_GRID) {
    const lanes = dispatch(model, rule);
    load(trial, lanes);
    if (trial.cost < least) [best, least] = [lanes, trial.cost];
    if (budget.isSpent()) break;
  }
  return best;
}

function load(s: Lanes, lanes: readonly (readonly number[])[]): void {
  lanes.forEach((jobs, lane) => s.setLane(lane, jobs));
  s.resum();
}

function takeOut(s: Lanes): LaneResult {
  const lanes = Array.from({ length: s.model.lanes }, (_, lane) =>
    Array.from(s.seq.subarray(lane * s.stride + 1, lane * s.stride + 1 + s.length[lane]!)),
  );
  return { lanes, value: s.value() };
}

/** The solution from which kicks start. */
class Kept {
  cost = Infinity;
  private readonly seq: Int32Array;
  private readonly length: Int32Array;

  constructor(private readonly s: Lanes) {
    this.seq = new Int32Array(s.seq.length);
    this.length = new Int32Array(s.length.length);
  }

  save(): void {
    this.seq.set(this.s.seq);
    this.length.set(this.s.length);
    this.cost = this.s.cost;
  }

  restore(): void {
    const { s } = this;
    for (let lane = 0; lane < s.model.lanes; lane++) {
      const from = firstDifference(s, lane, this.seq, this.length[lane]!);
      if (from < 0) continue;
      const base = lane * s.stride;
      s.seq.set(this.seq.subarray(base, base + this.length[lane]! + 2), base);
      s.length[lane] = this.length[lane]!;
      s.refresh(lane, from);
    }
  }
}

function firstDifference(s: Lanes, lane: number, seq: Int32Array, length: number): number {
  const base = lane * s.stride;
  for (let x = 1; x <= length + 1; x++) if (s.seq[base + x] !== seq[base + x]) return x;
  return s.length[lane] === length ? -1 : length + 1;
}
