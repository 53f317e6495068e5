import type { Budget } from '../budget.js';
import type { Random } from '../random.js';
import { cross, crossLane } from './cross.js';
import { Descent } from './descent.js';
import { dispatch, meansOf, RULE_GRID } from './dispatch.js';
import { Elite } from './elite.js';
import { kick } from './kick.js';
import { Lanes } from './lanes.js';
import type { LaneModel } from './model.js';

export interface LaneResult {
  lanes: number[][];
  value: number;
}

/**
 * Iterated local search in phases: kick, go downhill, keep what is better or, while it is warm, a little worse. One lane begins each
 * phase from the best plan, shaken; with more lanes the first phases begin apart. What two good plans of the phases before have in
 * common is where later phases begin: all of them with more lanes, and with changeovers in one lane every other of those that follow
 * on one that found nothing.
 */
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
  let ofPhase = best;
  onBetter(best, descent.evaluations);
  const kept = new Kept(s);
  const settle = (): void => {
    descent.run(
      () => budget.isSpent(),
      () => kept.isHere(),
    );
    if (s.value() >= ofPhase.value) return;
    ofPhase = takeOut(s);
    if (ofPhase.value >= best.value) return;
    best = ofPhase;
    onBetter(best, descent.evaluations);
  };
  descent.pushAll();
  settle();
  kept.save();
  const several = model.lanes > 1;
  const warmth = new Warmth(several ? SEVERAL_LANES : model.families > 1 ? ONE_LANE : ONE_LANE_WITHOUT_CHANGEOVERS);
  const elite = new Elite();
  while (!budget.isSpent() && best.value > 0) {
    budget.rounds++;
    if (budget.rounds % 1000 === 0) s.resum();
    kick(s, descent, random);
    settle();
    if (warmth.accepts(s.cost - kept.cost, kept.cost, random)) kept.save();
    else kept.restore();
    if (!warmth.isOver()) continue;
    elite.add(ofPhase);
    const stale = warmth.staleAfter(best.value);
    const isCrossed = several ? warmth.phases >= PHASES_APART : model.families > 1 && stale % 2 === 1;
    const parents = isCrossed ? elite.pair(random) : null;
    if (parents) {
      const mix = several ? cross : crossLane;
      mix(s, parents[0].lanes, parents[1].lanes, random);
      descent.pushAll();
    } else {
      load(s, best.lanes);
      shake(s, descent, random, several ? SHAKEN_APART : stale * SHAKEN);
    }
    ofPhase = { lanes: [], value: Infinity };
    settle();
    kept.save();
  }
  budget.evaluations = descent.evaluations;
  return best;
}

/** Kicks many places at once, so that the next phase begins elsewhere. @param share of the jobs; more than 1 kicks some again */
function shake(s: Lanes, descent: Descent, random: Random, share: number): void {
  const times = Math.ceil(s.model.jobs * share);
  for (let n = 0; n < times; n++) kick(s, descent, random);
}

/** Share of the jobs that a shake kicks, for each phase in a row that found nothing better. */
const SHAKEN = 1 / 3;
/** The same where a phase shall begin apart from all before. */
const SHAKEN_APART = 3;
/** How many phases between several lanes begin apart before plans are crossed. */
const PHASES_APART = 4;

/**
 * `phase`: kicks in the first phase. `growth`: how much longer each phase is than the one before. `heat`: this share of the cost may
 * be added at the start of a phase with a chance of 1/e. All were set by trials.
 */
interface Course {
  phase: number;
  growth: number;
  heat: number;
}
const ONE_LANE: Course = { phase: 300, growth: 1.1, heat: 0.008 };
/** Without changeovers the valleys are shallow: half the heat leaves them, and a second is better spent going down. */
const ONE_LANE_WITHOUT_CHANGEOVERS: Course = { phase: 400, growth: 1.3, heat: 0.004 };
const SEVERAL_LANES: Course = { phase: 500, growth: 1, heat: 0.01 };

/** Cools from warm to cold over a phase. */
class Warmth {
  /** Phases that are over. */
  phases = 0;
  private round = 0;
  private phase: number;
  private stale = 0;
  private least = Infinity;

  constructor(private readonly course: Course) {
    this.phase = course.phase;
  }

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
    this.phases++;
    this.round = 0;
    this.phase = Math.floor(this.phase * this.course.growth);
    return true;
  }
}

function bestDispatch(model: LaneModel, budget: Budget): number[][] {
  const trial = new Lanes(model);
  const means = meansOf(model);
  let best: number[][] = [];
  let least = Infinity;
  for (const rule of RULE_GRID) {
    const lanes = dispatch(model, rule, means);
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
  private readonly version: Int32Array;

  constructor(private readonly s: Lanes) {
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

  /** Whether the lanes hold just this: the way down undoes many a kick. */
  isHere(): boolean {
    const { s } = this;
    if (Math.abs(s.cost - this.cost) > ROUNDING) return false;
    for (let lane = 0; lane < s.model.lanes; lane++)
      if (s.version[lane] !== this.version[lane] && firstDifference(s, lane, this.seq, this.length[lane]!) >= 0)
        return false;
    return true;
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
      s.version[lane] = this.version[lane]!;
    }
  }
}

/** Sums of the same costs in another order differ by less. */
const ROUNDING = 1e-6;

function firstDifference(s: Lanes, lane: number, seq: Int32Array, length: number): number {
  const base = lane * s.stride;
  for (let x = 1; x <= length + 1; x++) if (s.seq[base + x] !== seq[base + x]) return x;
  return s.length[lane] === length ? -1 : length + 1;
}
