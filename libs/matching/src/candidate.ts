import type { Candidate, Link, LinkRole, ScorePart, Verdict } from './answer.js';
import { changeoverBetween } from './changeover.js';
import type { Item } from './item.js';
import { judgeTrain } from './judge-train.js';
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

/**
 * A found train with everything that people and the planner want to know about it. What only people read (verdicts, steps of the
 * changeover, parts of the score) is worked out when it is first read; written to JSON it is all there.
 */
export function candidateOf(found: Found, at: IndexedFrame, { index, context, pools: ordered }: Search): Candidate {
  const { needs, settings } = context;
  const { parts, pools } = withUnits(found, at, index, ordered);
  const links = linksOf(parts, pools);
  const item = (id: string) => index.byId.get(id);
  const warming = warmingOf(parts, needs, at.rig, settings);
  const verdicts = once(() => judgeTrain(parts, context, (id) => item(id)?.tag ?? id));
  const changeover = once(() => changeoverBetween(at.rig, { links }, settings, item, warming));
  const warmMin = warming ? warming.rampMin + warming.soakMin : 0;
  const scoreParts = once(() => scored(parts, links, changeover().minutes - warmMin, verdicts(), context));
  return {
    frameId: parts.frame.id,
    cellAt: parts.cellAt,
    links,
    get verdicts() {
      return verdicts();
    },
    windows: together(parts, context),
    score: found.points,
    get scoreParts() {
      return scoreParts();
    },
    get changeover() {
      return changeover();
    },
    limitStops: limitStopsOf(parts, needs, settings),
    soakMin: warming?.soakMin ?? 0,
    rampMin: warming?.rampMin ?? 0,
    hungMassKg: massOnCellKg(parts),
    governing: governing(parts, context),
  };
}

/** Works a value out when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: { value: T } | null = null;
  return () => (made ??= { value: make() }).value;
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

function ledBy(unit: Item, { pool, poolKey }: UnitPool): UnitPool {
  return { first: unit, pool: [unit.id, ...pool.filter((id) => id !== unit.id)], poolKey };
}

function leastOf(ids: readonly string[]): string {
  return ids.reduce((least, id) => (id < least ? id : least));
}

/** The units to take: the one that hangs on the frame already, else one that hangs nowhere, else the first by tag. */
function withUnits(
  found: Found,
  { frame, fitted }: IndexedFrame,
  index: LabIndex,
  ordered: Map<readonly Item[], UnitPool>,
): { parts: Parts; pools: Map<string, UnitPool> } {
  const pools = new Map<string, UnitPool>();
  const known = found.units();
  const chosen = <T extends Item | null>(item: T): T => {
    const units = item && known.get(item.id);
    if (!units) return item;
    const hanging = fitted.size > 0 && units.some(({ id }) => fitted.has(id));
    const pool = hanging ? unitPool(units, index, fitted) : standingPool(units, index, ordered);
    // Adapters are units already: two of one pool may hang in one train.
    const unit = item.kind === 'adapter' ? item : pool.first;
    pools.set(unit.id, unit === pool.first ? pool : ledBy(unit, pool));
    return unit as T;
  };
  const { parts } = found;
  const upper = chosen(parts.ends.upper);
  const lower = isPair(parts.ends) ? upper : chosen(parts.ends.lower);
  return {
    pools,
    parts: {
      frame,
      cell: chosen(parts.cell),
      cellAt: parts.cellAt,
      adapters: { upper: parts.adapters.upper.map(chosen), lower: parts.adapters.lower.map(chosen) },
      ends: { upper, lower },
      faces: chosen(parts.faces),
      extensometer: chosen(parts.extensometer),
      chamber: chosen(parts.chamber),
      guard: chosen(parts.guard),
      thermocouple: chosen(parts.thermocouple),
    },
  };
}

/** The places of a train with their items, from crosshead to base, then what stands beside the specimen. */
export function placesOf({
  cell,
  cellAt,
  adapters,
  ends,
  faces,
  extensometer,
  chamber,
  guard,
  thermocouple,
}: Parts): [LinkRole, Item][] {
  const [upper, upper2] = adapters.upper;
  const [lower, lower2] = adapters.lower;
  const places: [LinkRole, Item | null | undefined][] = [
    ['load-cell', cellAt === 'crosshead' ? cell : null],
    ['upper-adapter', upper],
    ['upper-adapter-2', upper2],
    [isPair(ends) ? 'ends' : 'upper', ends.upper],
    ['faces', faces],
    ['lower', isPair(ends) ? null : ends.lower],
    // Adapters are listed from frame to specimen, the drawing goes down to the frame.
    ['lower-adapter-2', lower2],
    ['lower-adapter', lower],
    ['load-cell', cellAt === 'base' ? cell : null],
    ['extensometer', extensometer],
    ['chamber', chamber],
    ['guard', guard],
    ['thermocouple', thermocouple],
  ];
  return places.flatMap(([role, item]) => (item ? [[role, item] as [LinkRole, Item]] : []));
}

/** Places as links; a pool that nobody gave is the unit alone. */
export function linksOf(parts: Parts, pools: ReadonlyMap<string, UnitPool> = new Map()): Link[] {
  return placesOf(parts).map(([role, { id: itemId }]) => {
    const { poolKey, pool } = pools.get(itemId) ?? { poolKey: itemId, pool: [itemId] };
    return { role, itemId, poolKey, pool };
  });
}

function scored(
  parts: Parts,
  links: readonly Link[],
  changeMin: number,
  verdicts: readonly Verdict[],
  { needs, settings }: RequestContext,
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
    part('accuracy', accuracyPoints(parts.cell, needs, settings), 'reserve of class and range at the smallest force'),
    part('cautions', settings.weights.caution * cautions, `${cautions} cautions`),
  ];
}

/** The link with the least to spare against the load: frame, cell, or one of the rated links. */
function governing(parts: Parts, { needs }: RequestContext): Candidate['governing'] {
  const { direction, temperature } = needs;
  const rated = placesOf(parts)
    .map(([, item]) => item)
    .filter((item) => ['grip', 'jaw-face', 'fixture', 'platen', 'adapter'].includes(item.kind))
    .map((item) => ({
      rule: 'weakest-link' as const,
      itemId: item.id,
      ratingN: ratingAt(item, direction, temperature.value),
    }));
  const all = [
    { rule: 'frame-capacity' as const, itemId: parts.frame.id, ratingN: capacityOf(parts.frame.details, direction) },
    { rule: 'cell-capacity' as const, itemId: parts.cell.id, ratingN: cellCapacityFor(parts.cell, needs) },
    ...rated,
  ];
  return all.reduce((least, each) => (each.ratingN < least.ratingN ? each : least));
}
