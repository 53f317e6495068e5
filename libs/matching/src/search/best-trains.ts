import type { Adapter, Item } from '../item.js';
import { massOnCellKg, seatOf } from '../parts.js';
import type { Adapters, Ends, Parts } from '../parts.js';
import type { RuleCode } from '../answer.js';
import { couplingId } from '../couplings.js';
import type { MatchSettings } from '../settings.js';
import { accuracyPoints, changeMinutes, clearMinutes, forceFitPoints, scarcePoints } from '../score.js';
import { bitOf, countBits, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { BesideChoice, CellChoice, Choice, ClassChoices } from './class-choices.js';
import { frameTally } from './frame-tally.js';
import type { IndexedFrame } from './lab-index.js';
import type { Option } from './options.js';
import { adapterRoomMm, trainOf, WHOLE_CHECKS } from './whole-train.js';
import type { Search } from './whole-train.js';

/** A train found by the search, with the units that could stand for each of its items. */
export interface Found {
  parts: Parts;
  units: ReadonlyMap<string, readonly Item[]>;
  points: number;
}

/** Rules of a whole train that another choice beside the specimen could still satisfy. */
const BESIDE = bitOf('calibration-in-force') | bitOf('temperature');
const CELL_CAPACITY = bitOf('cell-capacity');
/** Rules that other adapters could satisfy as well: a longer stack, a lighter one, other times. */
const OTHER_ADAPTERS = BESIDE | bitOf('test-space') | bitOf('cell-capacity');

type Priced<T> = T & { points: number };
type Pricing = (choice: { units: Option<unknown>['units'] }) => number;

/** What a frame brings to each of its trains. Points of adapters come last, so that what comes before is never more than the whole. */
interface Site {
  at: IndexedFrame;
  own: Tally;
  base: number;
  adaptersOff: number;
  price: Pricing;
}

/** Trains that are tried once enough were found; many choices of a large lab differ by nothing that anyone would notice. */
const TRIES_FOR_BETTER = 24;

/**
 * The best trains on a frame, best first, none failing anything. Choices are tried in order of their own points, and the loops stop
 * where even the best of the rest cannot beat what was found, or after a number of tries that found nothing better.
 *
 * @param most how many to keep
 */
export function bestTrains(at: IndexedFrame, search: Search, most: number): Found[] {
  const { context } = search;
  const own = frameTally(at.frame, context);
  if (own.fails !== 0) return [];
  const site = siteOf(at, own, search);
  const { settings, needs } = context;
  const sound = search.soundFor(at.frame, at.classKey);
  const cells = priced(
    sound.cells,
    (cell) =>
      site.price(cell) +
      forceFitPoints(at.frame, cell.part, needs, settings) +
      accuracyPoints(cell.part, needs, settings),
    settings,
  );
  const groups = cells.length === 0 ? [] : groupsOf(sound, site.price, settings);
  const besides = priced(
    sound.beside,
    (each) =>
      site.price(each.extensometer) + site.price(each.chamber) + site.price(each.guard) + site.price(each.thermocouple),
    settings,
  );
  if (groups.length === 0 || besides.length === 0) return [];
  const kept: Found[] = [];
  let tries = TRIES_FOR_BETTER;
  const bar = () => (kept.length < most ? Infinity : tries <= 0 ? -Infinity : kept.at(-1)!.points);
  const least = site.base + besides[0]!.points;
  for (const cell of cells) {
    if (least + cell.points >= bar()) break;
    for (const { holders, adapterPoints } of reachable(groups, cell, site, search)) {
      const before = least + cell.points + adapterPoints;
      if (before + holders[0]!.points >= bar()) break;
      for (const holder of holders) {
        if (before + holder.points >= bar()) break;
        tryFaces(holder, cell, besides, site, before, bar, search, (found) => {
          if (kept.length === most) tries -= 1;
          if (found) keep(kept, found, most);
        });
      }
    }
  }
  return kept;
}

function tryFaces(
  { ends, faces }: Holder,
  cell: Priced<CellChoice>,
  besides: readonly Priced<BesideChoice>[],
  site: Site,
  before: number,
  bar: () => number,
  search: Search,
  tried: (train: Found | null) => void,
): void {
  for (const each of faces) {
    if (before + ends.points + each.points >= bar()) return;
    const train = assemble(site, cell, ends, each, besides, bar(), search);
    if (train === 'hopeless') return;
    tried(train);
  }
}

interface Holder {
  ends: Priced<Choice<Ends>>;
  faces: readonly Priced<Choice<Parts['faces']>>[];
  /** With the cheapest faces. */
  points: number;
}

/** Ends with the faces that seat in them, cheapest first, by the couplings that they offer: one group is joined in one way. */
function groupsOf(sound: ClassChoices, price: Pricing, settings: MatchSettings): Holder[][] {
  const bySeat = new Map<string | null, readonly Priced<Choice<Parts['faces']>>[]>();
  const groups = new Map<string, Holder[]>();
  for (const ends of priced(sound.ends, price, settings)) {
    const seat = seatOf(ends.part);
    const faces = bySeat.get(seat) ?? priced(sound.facesFor(ends.part), price, settings);
    bySeat.set(seat, faces);
    if (faces.length === 0) continue;
    const key = `${couplingId(ends.part.upper.details.coupling)} ${couplingId(ends.part.lower.details.coupling)}`;
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push({ ends, faces, points: ends.points + faces[0]!.points });
  }
  return [...groups.values()].map((group) => group.sort((a, b) => a.points - b.points));
}

interface Reachable {
  holders: readonly Holder[];
  /** Points of the adapters, at least. */
  adapterPoints: number;
}

/** The groups that a cell on this frame can be joined with, cheapest first. */
function reachable(
  groups: readonly Holder[][],
  cell: CellChoice,
  { at, adaptersOff }: Site,
  { routes, context: { settings } }: Search,
): Reachable[] {
  const each = adaptersOff > 0 ? 0 : settings.weights.changeoverPerMin * settings.changeMin.adapter;
  return groups
    .flatMap((holders): Reachable[] => {
      const [first] = routes.join({
        frame: at.frame,
        cell: cell.part,
        cellAt: cell.cellAt,
        ends: holders[0]!.ends.part,
      });
      if (!first) return [];
      const { upper, lower } = first.adapters;
      return [{ holders, adapterPoints: each * (upper.length + lower.length) }];
    })
    .sort((a, b) => a.adapterPoints + a.holders[0]!.points - b.adapterPoints - b.holders[0]!.points);
}

function siteOf(at: IndexedFrame, own: Tally, { index, context: { settings } }: Search): Site {
  const hanging = at.rig.itemIds.flatMap((id) => index.byId.get(id) ?? []);
  const perMin = settings.weights.changeoverPerMin;
  const clear = (adapters: boolean) =>
    perMin *
    clearMinutes(
      hanging.filter(({ kind }) => (kind === 'adapter') === adapters),
      settings,
    );
  const price: Pricing = ({ units }) =>
    units.reduce((sum, list) => {
      const fitted = list.find(({ id }) => at.fitted.has(id));
      return (
        sum +
        perMin * changeMinutes(fitted ?? list[0]!, fitted !== undefined, settings) +
        scarcePoints(list.length, settings)
      );
    }, 0);
  return { at, own, base: clear(false), adaptersOff: clear(true), price };
}

/** Cautions that one part of the train alone can bring, so that they may be priced with it; the others are priced at the end. */
const OWN_CAUTIONS = ['cell-band', 'face-suits', 'specimen-fit', 'strain'].reduce(
  (bits, code) => bits | bitOf(code as RuleCode),
  0,
);

/** Cheapest first; equal ones stay in the order of their tags. */
function priced<T extends Tally>(
  list: readonly T[],
  points: (each: T) => number,
  { weights }: MatchSettings,
): Priced<T>[] {
  return list
    .map((each) => ({ ...each, points: points(each) + weights.caution * countBits(each.cautions & OWN_CAUTIONS) }))
    .sort((a, b) => a.points - b.points);
}

function keep(kept: Found[], found: Found, most: number): void {
  const place = kept.findIndex(({ points }) => points > found.points);
  kept.splice(place === -1 ? kept.length : place, 0, found);
  kept.length = Math.min(kept.length, most);
}

/**
 * The train of these choices with adapters and what stands beside it, when it passes and costs less than the bar.
 *
 * @returns `hopeless` when no faces could make a difference
 */
function assemble(
  site: Site,
  cell: Priced<CellChoice>,
  end: Priced<Choice<Ends>>,
  faces: Priced<Choice<Parts['faces']>>,
  besides: readonly Priced<BesideChoice>[],
  bar: number,
  search: Search,
): Found | null | 'hopeless' {
  const { frame } = site.at;
  const { context, routes } = search;
  const room = adapterRoomMm({ frame, cell: cell.part, ends: end.part }, context);
  if (room.most < 0 || room.most < room.least) return 'hopeless';
  let joinable = false;
  let tooHeavyKg = Infinity;
  for (const { adapters: joined, lengthMm } of routes.join({
    frame,
    cell: cell.part,
    cellAt: cell.cellAt,
    ends: end.part,
  })) {
    if (lengthMm < room.least || lengthMm > room.most) continue;
    joinable = true;
    const hungKg = massOnCellKg({ cellAt: cell.cellAt, adapters: joined, ends: end.part, faces: faces.part });
    if (hungKg >= tooHeavyKg) continue;
    for (const beside of besides) {
      const parts = trainOf(frame, cell, end, faces, joined, beside);
      const whole = tally(WHOLE_CHECKS, parts, context);
      if (whole.fails === 0) return finished(site, parts, [cell, end, faces], beside, whole.cautions, bar, search);
      if ((whole.fails & CELL_CAPACITY) !== 0) tooHeavyKg = hungKg;
      if ((whole.fails & ~OTHER_ADAPTERS) !== 0) return null;
      if ((whole.fails & ~BESIDE) !== 0) break;
    }
  }
  return joinable ? null : 'hopeless';
}

/** A train that passes, with its points and units; null when it costs as much as the bar. */
function finished(
  site: Site,
  parts: Parts,
  main: readonly Priced<Choice<unknown>>[],
  beside: Priced<BesideChoice>,
  wholeCautions: number,
  bar: number,
  search: Search,
): Found | null {
  const { adapters, pools } = preferFitted(parts.adapters, site, search);
  const bits = main.reduce((sum, { cautions }) => sum | cautions, site.own.cautions | beside.cautions | wholeCautions);
  const points =
    main.reduce((sum, each) => sum + each.points, beside.points) +
    fixedPoints(site, pools, countBits(bits & ~OWN_CAUTIONS), search);
  if (points >= bar) return null;
  const choices = [...main, beside.extensometer, beside.chamber, beside.guard, beside.thermocouple];
  return { parts: { ...parts, adapters }, units: unitsOf(choices, pools), points };
}

type AdapterPools = readonly (readonly [Adapter, readonly Adapter[]])[];

/** Points of what the choices do not carry: clearing the frame, adapters, cautions. */
function fixedPoints(
  { at, base, adaptersOff }: Site,
  pools: AdapterPools,
  cautions: number,
  { context: { settings } }: Search,
): number {
  const { changeoverPerMin, caution } = settings.weights;
  const adapterPoints = pools.map(
    ([own, pool]) =>
      changeoverPerMin * changeMinutes(own, at.fitted.has(own.id), settings) + scarcePoints(pool.length, settings),
  );
  return base + adaptersOff + adapterPoints.reduce((sum, each) => sum + each, 0) + caution * cautions;
}

/** The same adapters, by the units that hang on the frame already where there are any; never one unit twice. */
function preferFitted(
  adapters: Adapters,
  { at }: Site,
  { routes }: Search,
): { adapters: Adapters; pools: AdapterPools } {
  const taken = new Set<string>();
  const pools: [Adapter, readonly Adapter[]][] = [];
  const choose = (adapter: Adapter): Adapter => {
    const pool = routes.poolOf(adapter);
    const free = pool.filter(({ id }) => !taken.has(id));
    const own = free.find(({ id }) => at.fitted.has(id)) ?? free[0]!;
    taken.add(own.id);
    pools.push([own, pool]);
    return own;
  };
  return { adapters: { upper: adapters.upper.map(choose), lower: adapters.lower.map(choose) }, pools };
}

function unitsOf(
  choices: readonly { units: Option<unknown>['units'] }[],
  adapters: AdapterPools,
): Map<string, readonly Item[]> {
  const lists = choices.flatMap(({ units }) => units).map((list) => [list[0]!.id, list] as const);
  return new Map<string, readonly Item[]>([...lists, ...adapters.map(([own, pool]) => [own.id, pool] as const)]);
}
