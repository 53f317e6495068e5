import type { Calibration, Frame, Item, ItemKind, TimeWindow } from '../register/item.js';
import type { Lab, Rig } from '../register/lab.js';
import { MAY_STAY } from './score.js';

/** Units that are equal in everything but id, tag, name, place, due dates and bookings elsewhere, so that only times tell them apart. */
export interface Pool {
  units: readonly Item[];
  /** All units as one choice, and the first alone, which stands for a pool without a usable unit. */
  all: Chosen<Item>;
  first: Chosen<Item>;
  /** The choice for every request, where no unit is limited in time; else null. */
  standing: Chosen<Item> | null;
  /** What its units are calibrated for; null where a unit is booked elsewhere at times, so that each unit has to be checked. */
  spans: readonly Span[] | null;
}

/** One calibration of equal units, and the time over which all of them hold it; empty when there is none. */
export interface Span extends TimeWindow {
  calibration: Calibration;
}

/** Items that could take one part of a train: one that stands for all, and the lists of those that are equal to it. */
export interface Chosen<T> {
  part: T;
  units: readonly (readonly Item[])[];
}

/** A lab made ready for many requests. */
export interface LabIndex {
  rigs: Lab['rigs'];
  byId: ReadonlyMap<string, Item>;
  pools: ReadonlyMap<ItemKind, readonly Pool[]>;
  frames: readonly IndexedFrame[];
  /** Frame that an item is fitted on. */
  fittedOn: ReadonlyMap<string, string>;
}

export interface IndexedFrame {
  frame: Frame;
  rig: Rig;
  fitted: ReadonlySet<string>;
  /** What hangs on it: adapters, and all else. */
  adapters: readonly Item[];
  others: readonly Item[];
  /** Seats of the faces among these. */
  seats: readonly string[];
  /** Whether something hangs there that stands beside a specimen. */
  besideHangs: boolean;
}

const known = new WeakMap<Lab['items'], LabIndex>();

/** Sorts a lab's items into pools, once for each list of items. A lab that changed must come with a new one. */
export function indexLab(lab: Lab): LabIndex {
  const found = known.get(lab.items);
  if (found?.rigs === lab.rigs) return found;
  const items = [...lab.items].sort(byTag);
  const byId = new Map(items.map((item) => [item.id, item]));
  const index = {
    rigs: lab.rigs,
    byId,
    pools: poolsOf(items),
    frames: items.filter((item) => item.kind === 'frame').map((frame) => indexFrame(frame, lab.rigs, byId)),
    fittedOn: new Map(lab.rigs.flatMap(({ frameId, itemIds }) => itemIds.map((id) => [id, frameId] as const))),
  };
  known.set(lab.items, index);
  return index;
}

/**
 * The index as it would be if an item were changed or bought, reduced to trains that contain the item: of its kind only the pool that
 * it joins and pools that one train could use together with it; if it is a frame, no other frame.
 */
export function indexThrough(index: LabIndex, item: Item): LabIndex {
  if (item.kind === 'frame') return { ...index, frames: [indexFrame(item, index.rigs, index.byId)] };
  const rest = (index.pools.get(item.kind) ?? []).flatMap((pool) => without(pool, item.id));
  const joined = rest.find(({ first }) => areEqual(first.part, item));
  const pools = [
    ...rest.filter((pool) => pool !== joined && mayPair(pool.first.part, item)),
    poolOf([...(joined?.units ?? []), item].sort(byTag)),
  ];
  return { ...index, pools: new Map(index.pools).set(item.kind, pools) };
}

function without(pool: Pool, id: string): Pool[] {
  const units = pool.units.filter((unit) => unit.id !== id);
  if (units.length === pool.units.length) return [pool];
  return units.length === 0 ? [] : [poolOf(units)];
}

/** Whether one train could hold both: adapters follow each other, single ends stand across from each other. */
function mayPair(a: Item, b: Item): boolean {
  return b.kind === 'adapter' || ('side' in a.details && 'side' in b.details && b.details.side !== 'pair');
}

function byTag(a: Item, b: Item): number {
  return compareText(a.tag, b.tag) || compareText(a.id, b.id);
}

/** By code unit, so that the order is the same on every machine. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

const keys = new WeakMap<Item, string>();

/** The key of an item, worked out once for each item object: a lab that changed shares most of its items with the one before. */
function keyOf(item: Item): string {
  const found = keys.get(item) ?? poolKey(item);
  keys.set(item, found);
  return found;
}

function poolsOf(items: readonly Item[]): Map<ItemKind, Pool[]> {
  const groups = new Map<ItemKind, Item[][]>();
  const alike = new Map<string, Item[][]>();
  for (const item of items) {
    if (item.kind === 'frame') continue;
    const near = listAt(alike, roughKey(item));
    const units = near.find(([first]) => areEqual(first!, item));
    if (units) units.push(item);
    else {
      const own = [item];
      near.push(own);
      listAt(groups, item.kind).push(own);
    }
  }
  return new Map([...groups].map(([kind, lists]) => [kind, lists.map(poolOf)]));
}

function listAt<K, T>(map: Map<K, T[]>, key: K): T[] {
  const found = map.get(key) ?? [];
  map.set(key, found);
  return found;
}

/** Tells most items apart at little cost. */
function roughKey({ kind, state, massKg, lengthMm, temperatureMinC, temperatureMaxC, calibrations }: Item): string {
  return `${kind} ${state} ${massKg} ${lengthMm} ${temperatureMinC} ${temperatureMaxC} ${calibrations.length}`;
}

function areEqual(a: Item, b: Item): boolean {
  return roughKey(a) === roughKey(b) && keyOf(a) === keyOf(b);
}

function poolOf(units: readonly Item[]): Pool {
  const part = units[0]!;
  const all = { part, units: [units] };
  const first = units.length === 1 ? all : { part, units: [[part]] };
  const held = units.some(({ heldWindows }) => heldWindows.length > 0);
  const standing = held || units.some(({ needsCalibration }) => needsCalibration) ? null : all;
  // Units of one pool share their state: out of service, one speaks for all.
  if (part.state !== 'in-service') return { units, all, first, standing: first, spans: null };
  return { units, all, first, standing, spans: held || standing ? null : spansOf(units) };
}

function spansOf([first, ...others]: readonly Item[]): Span[] {
  return first!.calibrations.map((calibration) => {
    const held = others.map(({ calibrations }) => calibrations.find((each) => verifies(each, calibration)));
    const startMs = Math.max(calibration.validFromMs, ...held.map((each) => each?.validFromMs ?? Infinity));
    return {
      calibration,
      startMs,
      endMs: Math.min(calibration.dueMs, ...held.map((each) => each?.dueMs ?? -Infinity)),
    };
  });
}

function verifies(a: Calibration, b: Calibration): boolean {
  return verified(a) === verified(b);
}

/** What a calibration says but for its dates. */
function verified({ direction, standard, className, from, to }: Calibration): string {
  return [direction, standard, className, from, to].join();
}

/** What makes two units equal. Calibrations count with class and range, not with their dates. */
function poolKey({
  kind,
  state,
  massKg,
  lengthMm,
  ratings,
  temperatureMinC,
  temperatureMaxC,
  utilities,
  needsCalibration,
  calibrations,
  details,
}: Item): string {
  return canonical([
    kind,
    state,
    massKg,
    lengthMm,
    ratings,
    temperatureMinC,
    temperatureMaxC,
    utilities,
    needsCalibration,
    calibrations.map(verified).sort(),
    details,
  ]);
}

/** JSON with the keys in order, so that equal data gives equal text whatever way it was read. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).sort(([a], [b]) => compareText(a, b));
  return `{${entries.map(([key, inner]) => `${key}:${canonical(inner)}`).join()}}`;
}

function indexFrame(frame: Frame, rigs: Lab['rigs'], byId: LabIndex['byId']): IndexedFrame {
  const rig = rigs.find(({ frameId }) => frameId === frame.id) ?? { frameId: frame.id, itemIds: [], chamberC: null };
  const hanging = rig.itemIds.flatMap((id) => byId.get(id) ?? []);
  return {
    frame,
    rig,
    fitted: new Set(rig.itemIds),
    adapters: hanging.filter(({ kind }) => kind === 'adapter'),
    others: hanging.filter(({ kind }) => kind !== 'adapter'),
    seats: hanging.flatMap((item) => (item.kind === 'jaw-face' ? [item.details.slot] : [])),
    besideHangs: hanging.some(({ kind }) => kind === 'chamber' || MAY_STAY.includes(kind)),
  };
}
