import type { Adapter, Item } from '../item.js';
import { massOnCellKg } from '../parts.js';
import { isTooHeavy } from '../rules/cell-capacity.js';
import type { Adapters, Ends, Parts } from '../parts.js';
import { changeMinutes, scarcePoints } from '../score.js';
import { bitOf, countBits, tally } from './checks.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import type { Holder } from './holders.js';
import type { Option } from './options.js';
import { OWN_CAUTIONS } from './own-cautions.js';
import { besidesOf, cellOnFrame, cellsOf, fittedIn, onFrame } from './site.js';
import type { Priced, Site } from './site.js';
import { adapterRoomMm, NO_ADAPTERS, trainOf, WHOLE_CHECKS } from './whole-train.js';
import type { Search } from './search.js';

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

/** Trains that are tried once enough were found; many choices of a large lab differ by nothing that anyone would notice. */
const TRIES_FOR_BETTER = 6;

/**
 * The best trains on a frame, best first, none failing anything. Choices are tried in order of their own points, and the loops stop
 * where even the best of the rest cannot beat what was found, or after a number of tries that found nothing better.
 *
 * @param most how many to keep
 * @param inSpite look for trains although the frame alone, or the lab, fails a rule
 */
export function bestTrains(site: Site, search: Search, most: number, inSpite = false): Found[] {
  const { at, own } = site;
  if (own.fails !== 0 && !inSpite) return [];
  const cells = cellsOf(site, search);
  if (cells.length === 0) return [];
  const besides = besidesOf(site, search);
  if (besides.length === 0) return [];
  const kept: Found[] = [];
  let tries = TRIES_FOR_BETTER;
  const bar = () => (kept.length < most ? Infinity : tries <= 0 ? -Infinity : kept.at(-1)!.points);
  const least = site.base + besides[0]!.points;
  for (const ranked of cells) {
    if (least + ranked.points >= bar()) break;
    const cell = cellOnFrame(ranked, site);
    if (!cell) continue;
    const open = { frame: at.frame, cell: cell.part, cellAt: cell.cellAt };
    for (const { group, adapterPoints } of search.reach.from(open, site.adaptersOff > 0)) {
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
  const joinings = routes.join({ frame, cell: cell.part, cellAt: cell.cellAt, ends: end.part });
  for (let n = 0, next = joinings.nth(0); next; n += 1, next = joinings.nth(n)) {
    const { adapters: joined, lengthMm } = next;
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
