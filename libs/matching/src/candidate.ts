import type { Candidate, Link, LinkRole, ScorePart, Verdict } from './answer.js';
import { changeoverBetween } from './changeover.js';
import type { Warming } from './changeover.js';
import type { Item, ItemKind } from './item.js';
import { judgeTrain } from './judge-train.js';
import type { Rig } from './lab.js';
import { isPair, massOnCellKg } from './parts.js';
import type { Parts } from './parts.js';
import { together } from './rules/calibration-in-force.js';
import { ratingAt } from './rating-at.js';
import { accuracyPoints, forceFitPoints, scarcePoints } from './score.js';
import { cellCapacityFor } from './rules/cell-capacity.js';
import { capacityOf } from './rules/frame-capacity.js';
import { limitStopsOf } from './space.js';
import { warmingOf } from './warming.js';
import type { IndexedFrame, LabIndex } from './search/lab-index.js';
import type { RequestContext } from './search/request-context.js';
import type { Found } from './search/best-trains.js';
import type { Search } from './search/search.js';

/** A found train with everything that people and the planner want to know about it. */
export function candidateOf(found: Found, at: IndexedFrame, search: Search): Candidate {
  const { parts, pools } = withUnits(found, at, search.index, search.pools);
  return new FoundCandidate(parts, linksOf(parts, pools), found.points, at.rig, search);
}

/**
 * What only people read (verdicts, steps of the changeover, parts of the score) is worked out when it is first read; written to JSON
 * it is all there.
 */
class FoundCandidate implements Candidate {
  readonly frameId: string;
  readonly cellAt: Candidate['cellAt'];
  readonly windows: Candidate['windows'];
  readonly limitStops: Candidate['limitStops'];
  readonly soakMin: number;
  readonly rampMin: number;
  readonly hungMassKg: number;
  readonly governing: Candidate['governing'];
  readonly #parts: Parts;
  readonly #rig: Rig;
  readonly #search: Search;
  readonly #warming: Warming | null;
  #verdicts: Candidate['verdicts'] | null = null;
  #scoreParts: Candidate['scoreParts'] | null = null;
  #changeover: Candidate['changeover'] | null = null;

  constructor(
    parts: Parts,
    readonly links: readonly Link[],
    readonly score: number,
    rig: Rig,
    search: Search,
  ) {
    const { context } = search;
    const { needs, settings } = context;
    this.frameId = parts.frame.id;
    this.cellAt = parts.cellAt;
    this.windows = together(parts, context);
    this.limitStops = limitStopsOf(parts, needs, settings);
    this.#warming = warmingOf(parts, needs, rig, settings);
    this.soakMin = this.#warming?.soakMin ?? 0;
    this.rampMin = this.#warming?.rampMin ?? 0;
    this.hungMassKg = massOnCellKg(parts);
    this.governing = governing(parts, context);
    this.#parts = parts;
    this.#rig = rig;
    this.#search = search;
  }

  get verdicts(): Candidate['verdicts'] {
    const { context, told } = this.#search;
    return (this.#verdicts ??= judgeTrain(this.#parts, context, (id) => this.#item(id)?.tag ?? id, told));
  }

  get changeover(): Candidate['changeover'] {
    const { settings } = this.#search.context;
    return (this.#changeover ??= changeoverBetween(this.#rig, this, settings, (id) => this.#item(id), this.#warming));
  }

  get scoreParts(): Candidate['scoreParts'] {
    const changeMin = this.changeover.minutes - this.rampMin - this.soakMin;
    return (this.#scoreParts ??= scored(this.#parts, this.links, changeMin, this.verdicts, this.#search.context));
  }

  toJSON(): Candidate {
    const { frameId, cellAt, links, verdicts, windows, score, scoreParts, changeover } = this;
    const { limitStops, soakMin, rampMin, hungMassKg, governing } = this;
    return {
      frameId,
      cellAt,
      links,
      verdicts,
      windows,
      score,
      scoreParts,
      changeover,
      limitStops,
      soakMin,
      rampMin,
      hungMassKg,
      governing,
    };
  }

  #item(id: string): Item | undefined {
    return this.#search.index.byId.get(id);
  }
}

/** Equal units in the order in which a frame would take them. */
export interface UnitPool extends Pick<Link, 'poolKey' | 'pool'> {
  first: Item;
}

function unitPool(units: readonly Item[], { fittedOn }: LabIndex, fitted: ReadonlySet<string>): UnitPool {
  const rank = ({ id }: Item) => (fitted.has(id) ? 0 : fittedOn.has(id) ? 2 : 1);
  const inOrder = units.length === 1 ? units : [...units].sort((a, b) => rank(a) - rank(b));
  const pool = inOrder.map(({ id }) => id);
  return { first: inOrder[0]!, pool, poolKey: leastOf(pool) };
}

/** The order on every frame where none of the units hangs; worked out once a request. */
function standingPool(units: readonly Item[], index: LabIndex, ordered: Map<readonly Item[], UnitPool>): UnitPool {
  const found = ordered.get(units) ?? unitPool(units, index, NOTHING_FITTED);
  ordered.set(units, found);
  return found;
}

const NOTHING_FITTED: ReadonlySet<string> = new Set();

function ledBy(unit: Item, standing: UnitPool): UnitPool {
  const { first, pool, poolKey } = standing;
  return unit === first ? standing : { first: unit, pool: [unit.id, ...pool.filter((id) => id !== unit.id)], poolKey };
}

function leastOf(ids: readonly string[]): string {
  return ids.reduce((least, id) => (id < least ? id : least));
}

/** The units to take: the one that hangs on the frame already, else one that hangs nowhere, else the first by tag. */
function withUnits(
  { parts, cell, ends, faces, beside, adapterPools }: Found,
  { frame, fitted }: IndexedFrame,
  index: LabIndex,
  ordered: Map<readonly Item[], UnitPool>,
): { parts: Parts; pools: UnitPool[] } {
  const pools: UnitPool[] = [];
  const poolFor = (units: readonly Item[]) =>
    fitted.size > 0 && units.some(({ id }) => fitted.has(id))
      ? unitPool(units, index, fitted)
      : standingPool(units, index, ordered);
  const chosen = <T extends Item | null>(item: T, units: readonly Item[] | undefined): T => {
    if (!item || !units) return item;
    const pool = poolFor(units);
    pools.push(pool);
    return pool.first as T;
  };
  const upper = chosen(parts.ends.upper, ends.units[0]);
  const taken: Parts = {
    frame,
    cell: chosen(parts.cell, cell.units[0]),
    cellAt: parts.cellAt,
    adapters: parts.adapters,
    ends: { upper, lower: isPair(parts.ends) ? upper : chosen(parts.ends.lower, ends.units[1]) },
    faces: chosen(parts.faces, faces.units[0]),
    extensometer: chosen(parts.extensometer, beside.extensometer.units[0]),
    chamber: chosen(parts.chamber, beside.chamber.units[0]),
    guard: chosen(parts.guard, beside.guard.units[0]),
    thermocouple: chosen(parts.thermocouple, beside.thermocouple.units[0]),
  };
  // Adapters are units already: two of one pool may hang in one train.
  for (const [adapter, units] of adapterPools) pools.push(ledBy(adapter, poolFor(units)));
  return { parts: taken, pools };
}

/** Calls with each place of a train and its item, from crosshead to base, then with what stands beside the specimen. */
function forEachPlace(
  { cell, cellAt, adapters, ends, faces, extensometer, chamber, guard, thermocouple }: Parts,
  call: (role: LinkRole, item: Item) => void,
): void {
  const pair = isPair(ends);
  const at = (role: LinkRole, item: Item | null | undefined) => {
    if (item) call(role, item);
  };
  at('load-cell', cellAt === 'crosshead' ? cell : null);
  at('upper-adapter', adapters.upper[0]);
  at('upper-adapter-2', adapters.upper[1]);
  at(pair ? 'ends' : 'upper', ends.upper);
  at('faces', faces);
  at('lower', pair ? null : ends.lower);
  // Adapters are listed from frame to specimen, the drawing goes down to the frame.
  at('lower-adapter-2', adapters.lower[1]);
  at('lower-adapter', adapters.lower[0]);
  at('load-cell', cellAt === 'base' ? cell : null);
  at('extensometer', extensometer);
  at('chamber', chamber);
  at('guard', guard);
  at('thermocouple', thermocouple);
}

/** The places of a train as links; a pool that nobody gave is the unit alone. */
export function linksOf(parts: Parts, pools: readonly UnitPool[] = []): Link[] {
  const links: Link[] = [];
  forEachPlace(parts, (role, { id: itemId }) => {
    const known = pools.find(({ first }) => first.id === itemId);
    links.push({ role, itemId, poolKey: known?.poolKey ?? itemId, pool: known?.pool ?? [itemId] });
  });
  return links;
}

function scored(
  parts: Parts,
  links: readonly Link[],
  changeMin: number,
  verdicts: readonly Verdict[],
  { needs, cellNeed, settings }: RequestContext,
): Candidate['scoreParts'] {
  const cautions = verdicts.filter(({ outcome }) => outcome === 'caution').length;
  const share = Math.round((100 * needs.peakHigh.value) / cellCapacityFor(parts.cell, needs));
  const part = (name: ScorePart, points: number, sentence: string) => ({ part: name, points, sentence });
  return [
    part('changeover', settings.weights.changeoverPerMin * changeMin, `${changeMin} min of changeover`),
    part('force-fit', forceFitPoints(parts.frame, parts.cell, needs, settings), `the peak is ${share} % of the cell`),
    part(
      'scarce-items',
      links.reduce((sum, { pool }) => sum + scarcePoints(pool.length, settings), 0),
      `${links.filter(({ pool }) => pool.length === 1).length} links have no second unit`,
    ),
    part(
      'accuracy',
      accuracyPoints(parts.cell, cellNeed, settings),
      'reserve of class and range at the smallest force',
    ),
    part('cautions', settings.weights.caution * cautions, `${cautions} cautions`),
  ];
}

/** The link with the least to spare against the load: frame, cell, or one of the rated links. */
function governing(parts: Parts, { needs }: RequestContext): Candidate['governing'] {
  const { frame, cell } = parts;
  const frameN = capacityOf(frame.details, needs.direction);
  const cellN = cellCapacityFor(cell, needs);
  let least: Candidate['governing'] =
    cellN < frameN
      ? { rule: 'cell-capacity', itemId: cell.id, ratingN: cellN }
      : { rule: 'frame-capacity', itemId: frame.id, ratingN: frameN };
  forEachPlace(parts, (_role, item) => {
    if (!CARRYING.includes(item.kind)) return;
    const ratingN = ratingAt(item, needs.direction, needs.temperature.value);
    if (ratingN < least.ratingN) least = { rule: 'weakest-link', itemId: item.id, ratingN };
  });
  return least;
}

/** Kinds that a load goes through and that are rated for it, besides frame and cell. */
const CARRYING: readonly ItemKind[] = ['grip', 'jaw-face', 'fixture', 'platen', 'adapter'];
