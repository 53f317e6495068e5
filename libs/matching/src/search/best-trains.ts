import type { Adapter, Item } from '../item.js';
import type { Adapters, Parts } from '../parts.js';
import { accuracyPoints, changeMinutes, clearMinutes, forceFitPoints, scarcePoints } from '../score.js';
import { bitOf, countBits, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { frameTally } from './frame-tally.js';
import type { IndexedFrame } from './lab-index.js';
import type { Option } from './options.js';
import { trainOf, WHOLE_CHECKS } from './whole-train.js';
import type { Search } from './whole-train.js';

/** A train found by the search, with the units that could stand for each of its items. */
export interface Found {
  parts: Parts;
  units: ReadonlyMap<string, readonly Item[]>;
  points: number;
}

/** Rules of a whole train that another choice beside the specimen could still satisfy. */
const BESIDE = bitOf('calibration-in-force') | bitOf('temperature');
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

/**
 * The best trains on a frame, best first, none failing anything. Choices are tried in order of their own points, and the loops stop
 * where even the best of the rest cannot beat what was found.
 *
 * @param most how many to keep
 */
export function bestTrains(at: IndexedFrame, search: Search, most: number): Found[] {
  const { context } = search;
  const own = frameTally(at.frame, context);
  if (own.fails !== 0) return [];
  const site = siteOf(at, own, search);
  const { settings, needs } = context;
  const sound = search.choicesFor(at.frame, at.classKey).sound;
  const cells = priced(
    sound.cells,
    (cell) =>
      site.price(cell) +
      forceFitPoints(at.frame, cell.part, needs, settings) +
      accuracyPoints(cell.part, needs, settings),
  );
  const ends = priced(sound.ends, site.price);
  const besides = priced(
    sound.beside,
    (each) =>
      site.price(each.extensometer) + site.price(each.chamber) + site.price(each.guard) + site.price(each.thermocouple),
  );
  if (ends.length === 0 || besides.length === 0) return [];
  const kept: Found[] = [];
  const bar = () => (kept.length < most ? Infinity : kept.at(-1)!.points);
  const least = site.base + besides[0]!.points;
  for (const cell of cells) {
    if (least + cell.points + ends[0]!.points >= bar()) break;
    for (const end of ends) {
      if (least + cell.points + end.points >= bar()) break;
      const found = assemble(site, cell, end, besides, search);
      if (found && found.points < bar()) keep(kept, found, most);
    }
  }
  return kept;
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

/** Cheapest first; equal ones stay in the order of their tags. */
function priced<T>(list: readonly T[], points: (each: T) => number): Priced<T>[] {
  return list.map((each) => ({ ...each, points: points(each) })).sort((a, b) => a.points - b.points);
}

function keep(kept: Found[], found: Found, most: number): void {
  const place = kept.findIndex(({ points }) => points > found.points);
  kept.splice(place === -1 ? kept.length : place, 0, found);
  kept.length = Math.min(kept.length, most);
}

function assemble(
  site: Site,
  cell: Priced<CellChoice>,
  end: Priced<Choice<Parts['ends']>>,
  besides: readonly Priced<BesideChoice>[],
  search: Search,
): Found | null {
  const { frame } = site.at;
  for (const joined of search.routes.join({ frame, cell: cell.part, cellAt: cell.cellAt, ends: end.part })) {
    const { adapters, pools } = preferFitted(joined, site, search);
    for (const beside of besides) {
      const parts = trainOf(frame, cell, end, adapters, beside);
      const whole = tally(WHOLE_CHECKS, parts, search.context);
      if (whole.fails === 0) {
        const cautions = countBits(site.own.cautions | cell.cautions | end.cautions | beside.cautions | whole.cautions);
        const points = cell.points + end.points + beside.points + fixedPoints(site, pools, cautions, search);
        return {
          parts,
          units: unitsOf([cell, end, beside.extensometer, beside.chamber, beside.guard, beside.thermocouple], pools),
          points,
        };
      }
      if ((whole.fails & ~OTHER_ADAPTERS) !== 0) return null;
      if ((whole.fails & ~BESIDE) !== 0) break;
    }
  }
  return null;
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
