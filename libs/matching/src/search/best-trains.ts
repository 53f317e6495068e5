import type { Adapter, Item } from '../item.js';
import { massOnCellKg } from '../parts.js';
import { isTooHeavy } from '../rules/cell-capacity.js';
import type { Adapters, Ends, Parts } from '../parts.js';
import { accuracyPoints, changeMinutes, clearMinutes, forceFitPoints, scarcePoints } from '../score.js';
import { bitOf, countBits, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { BesideChoice, CellChoice, Choice, ClassChoices } from './class-choices.js';
import { frameTally } from './frame-tally.js';
import type { IndexedFrame } from './lab-index.js';
import { freshPoints, savedPoints } from './holders.js';
import type { Fresh, Holder, HolderGroup } from './holders.js';
import type { Option } from './options.js';
import { OWN_CAUTIONS } from './own-cautions.js';
import { adapterRoomMm, NO_ADAPTERS, trainOf, WHOLE_CHECKS } from './whole-train.js';
import type { Search } from './whole-train.js';

/** A train found by the search, with the units that could stand for each of its items. */
export interface Found {
  parts: Parts;
  /** Made when it is asked for: most trains that are found are beaten by a better one. */
  units(): ReadonlyMap<string, readonly Item[]>;
  points: number;
}

/** Rules of a whole train that another choice beside the specimen could still satisfy. */
const BESIDE = bitOf('calibration-in-force') | bitOf('temperature');
const CELL_CAPACITY = bitOf('cell-capacity');
/** Rules that other adapters could satisfy as well: a longer stack, a lighter one, other times. */
const OTHER_ADAPTERS = BESIDE | bitOf('test-space') | bitOf('cell-capacity');

type Priced<T> = T & { points: number };

/** What a frame brings to each of its trains. Points of adapters come last, so that what comes before is never more than the whole. */
interface Site {
  at: IndexedFrame;
  own: Tally;
  base: number;
  adaptersOff: number;
  sound: ClassChoices;
  /** Seats of the faces that hang on it. */
  seats: readonly string[];
}

/** Trains that are tried once enough were found; many choices of a large lab differ by nothing that anyone would notice. */
const TRIES_FOR_BETTER = 6;

/**
 * The best trains on a frame, best first, none failing anything. Choices are tried in order of their own points, and the loops stop
 * where even the best of the rest cannot beat what was found, or after a number of tries that found nothing better.
 *
 * @param most how many to keep
 * @param inSpite look for trains although the frame alone, or the lab, fails a rule
 */
export function bestTrains(at: IndexedFrame, search: Search, most: number, inSpite = false): Found[] {
  const { context } = search;
  const own = frameTally(at.frame, context);
  if (own.fails !== 0 && !inSpite) return [];
  const site = siteOf(at, own, search);
  const { settings, needs } = context;
  const cells = priced(
    site.sound.cells,
    site,
    search,
    ({ part }) => forceFitPoints(at.frame, part, needs, settings) + accuracyPoints(part, needs, settings),
  );
  if (cells.length === 0) return [];
  const besides = besidesOf(site, search);
  if (besides.length === 0) return [];
  const kept: Found[] = [];
  let tries = TRIES_FOR_BETTER;
  const bar = () => (kept.length < most ? Infinity : tries <= 0 ? -Infinity : kept.at(-1)!.points);
  const least = site.base + besides[0]!.points;
  for (const cell of cells) {
    if (least + cell.points >= bar()) break;
    for (const { group, adapterPoints } of reachable(cell, site, search)) {
      const before = least + cell.points + adapterPoints;
      const attempt = (holder: Holder, fitted: boolean) =>
        tryFaces(holder, fitted, cell, besides, site, before, bar, search, (found) => {
          if (kept.length === most) tries -= 1;
          if (found) keep(kept, found, most);
        });
      const first = fittedIn(group, site);
      for (const holder of first) attempt(holder, true);
      for (const holder of group.holders) {
        if (before + holder.points >= bar()) break;
        if (!first.has(holder)) attempt(holder, false);
      }
    }
  }
  return kept;
}

/** Holders of which something hangs on the frame already; they cost less there than their group's order says. */
function fittedIn(group: HolderGroup, { at, seats }: Site): Set<Holder> {
  const found = new Set<Holder>();
  for (const id of at.fitted) for (const holder of group.having.get(id) ?? []) found.add(holder);
  for (const seat of seats) for (const holder of group.seated.get(seat) ?? []) found.add(holder);
  return found;
}

function tryFaces(
  holder: Holder,
  fitted: boolean,
  cell: Priced<CellChoice>,
  besides: readonly Priced<BesideChoice>[],
  site: Site,
  before: number,
  bar: () => number,
  search: Search,
  tried: (train: Found | null) => void,
): void {
  const end = onFrame(holder.ends, site.sound.cautionsOfEnds(holder.ends.option), site, search);
  if (!end) return;
  for (const fresh of holder.faces) {
    if (!fitted && before + end.points + fresh.points >= bar()) return;
    const faces = onFrame(fresh, site.sound.cautionsOfFaces(fresh.option), site, search);
    if (!faces || before + end.points + faces.points >= bar()) continue;
    const train = assemble(site, cell, end, faces, besides, bar(), search);
    if (train === 'hopeless') return;
    tried(train);
  }
}

/** A fresh choice as one on the frame; null when it fails there. */
function onFrame<T>(
  { option, points }: Fresh<T>,
  cautions: number | null,
  { at }: Site,
  { context: { settings } }: Search,
): Priced<Choice<T>> | null {
  if (cautions === null) return null;
  return {
    part: option.part,
    units: option.units,
    fails: 0,
    severity: 0,
    cautions,
    points: points - savedPoints(option, at.fitted, settings),
  };
}

interface Reachable {
  group: HolderGroup;
  /** Points of the adapters, at least. */
  adapterPoints: number;
}

/** The groups that a cell on this frame can be joined with, those with the fewest adapters first. */
function reachable(
  cell: CellChoice,
  { at, adaptersOff }: Site,
  { routes, groups, context: { settings } }: Search,
): Reachable[] {
  const each = adaptersOff > 0 ? 0 : settings.weights.changeoverPerMin * settings.changeMin.adapter;
  return groups
    .flatMap((group): Reachable[] => {
      const [first] = routes.join({ frame: at.frame, cell: cell.part, cellAt: cell.cellAt, ends: group.sample });
      if (!first) return [];
      const { upper, lower } = first.adapters;
      return [{ group, adapterPoints: each * (upper.length + lower.length) }];
    })
    .sort((a, b) => a.adapterPoints + a.group.holders[0]!.points - b.adapterPoints - b.group.holders[0]!.points);
}

function siteOf(at: IndexedFrame, own: Tally, { index, soundFor, context: { settings } }: Search): Site {
  const hanging = at.rig.itemIds.flatMap((id) => index.byId.get(id) ?? []);
  const perMin = settings.weights.changeoverPerMin;
  const clear = (adapters: boolean) =>
    perMin *
    clearMinutes(
      hanging.filter(({ kind }) => (kind === 'adapter') === adapters),
      settings,
    );
  const seats = hanging.flatMap((item) => (item.kind === 'jaw-face' ? [item.details.slot] : []));
  return { at, own, base: clear(false), adaptersOff: clear(true), sound: soundFor(at.frame, at.classKey), seats };
}

/** Cheapest first; equal ones stay in the order of their tags. */
function priced(
  list: readonly CellChoice[],
  site: Site,
  search: Search,
  more: (each: CellChoice) => number,
): Priced<CellChoice>[] {
  return list
    .map((each) => {
      const { part, units, cellAt, fails, cautions, severity } = each;
      return { part, units, cellAt, fails, cautions, severity, points: pointsOf(each, site, search) + more(each) };
    })
    .sort((a, b) => a.points - b.points);
}

function besidesOf(site: Site, search: Search): Priced<BesideChoice>[] {
  return site.sound.beside
    .map((each) => {
      const four = [each.extensometer, each.chamber, each.guard, each.thermocouple];
      return { ...each, points: four.reduce((sum, choice) => sum + pointsOf(choice, site, search), 0) };
    })
    .sort((a, b) => a.points - b.points);
}

function pointsOf({ units, cautions }: Choice<unknown>, { at }: Site, { context: { settings } }: Search): number {
  return (
    freshPoints({ units, tally: { fails: 0, cautions, severity: 0 } }, settings) -
    savedPoints({ units }, at.fitted, settings)
  );
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
  const leastKg = massOnCellKg({ cellAt: cell.cellAt, adapters: NO_ADAPTERS, ends: end.part, faces: null });
  if (isTooHeavy(cell.part, cell.cellAt, leastKg, context.needs)) return 'hopeless';
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
    if (isTooHeavy(cell.part, cell.cellAt, hungKg, context.needs)) {
      tooHeavyKg = hungKg;
      continue;
    }
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
  return { parts: { ...parts, adapters }, units: () => unitsOf(choices, pools), points };
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
