import type { Adapter, CellPosition, Chamber, Extensometer, Guard, Item, LoadCell, Transducer } from '../item.js';
import type { Adapters, Ends, Parts } from '../parts.js';
import { accuracyPoints, changeMinutes, clearMinutes, forceFitPoints, scarcePoints } from '../score.js';
import { bitOf, checksOf, countBits, otherChecks, tally } from './checks.js';
import type { Tally } from './checks.js';
import type { IndexedFrame, LabIndex } from './lab-index.js';
import { PART_CHECKS } from './options.js';
import type { Option, Options } from './options.js';
import type { RequestContext } from './request-context.js';
import type { Routes } from './routes.js';

const LAB = checksOf([]);
const FRAME = checksOf(['frame']);
const FRAME_CELL = checksOf(['frame', 'cell', 'cellAt'], ['frame', 'cell']);
const FRAME_ENDS = checksOf(['frame', 'ends']);
const FRAME_EXTENSOMETER = checksOf(['frame', 'extensometer']);
const FRAME_CHAMBER = checksOf(['frame', 'chamber']);
const FRAME_GUARD = checksOf(['frame', 'guard']);
const FRAME_THERMOCOUPLE = checksOf(['frame', 'thermocouple']);
const ADAPTERS = checksOf(['adapters']);
const WHOLE = otherChecks(
  LAB,
  FRAME,
  FRAME_CELL,
  FRAME_ENDS,
  FRAME_EXTENSOMETER,
  FRAME_CHAMBER,
  FRAME_GUARD,
  FRAME_THERMOCOUPLE,
  PART_CHECKS,
  ADAPTERS,
);

const COUPLINGS = bitOf('couplings');
/** Rules of a whole train that another chamber or extensometer could still satisfy. */
const BESIDE = bitOf('calibration-in-force') | bitOf('temperature');

/** A choice for a part on one class of frames: what the checks with that frame add. */
interface OnFrame<T> extends Option<T> {
  fails: number;
  cautions: number;
  severity: number;
}

interface CellOnFrame extends OnFrame<LoadCell> {
  cellAt: CellPosition;
}

interface Beside {
  extensometer: OnFrame<Extensometer | null>;
  chamber: OnFrame<Chamber | null>;
  guard: OnFrame<Guard | null>;
  thermocouple: OnFrame<Transducer | null>;
  fails: number;
  cautions: number;
  severity: number;
  points: number;
}

/** The choices on frames that share a class key. */
export interface ClassOptions {
  cells: readonly CellOnFrame[];
  ends: readonly OnFrame<Ends>[];
  beside: Omit<Beside, 'points'>[];
}

/** A train found by the search, with the units that could stand for each of its items. */
export interface Found {
  parts: Parts;
  units: ReadonlyMap<string, readonly Item[]>;
  points: number;
  fails: number;
}

export interface Search {
  index: LabIndex;
  context: RequestContext;
  options: Options;
  routes: Routes;
}

export function classOptions(frame: Parts['frame'], { options, context }: Search): ClassOptions {
  const on = <T>(list: readonly Option<T>[], checks: ReturnType<typeof checksOf>, place: (part: T) => Partial<Parts>) =>
    list.map((option): OnFrame<T> => ({
      ...option,
      ...added(option.tally, tally(checks, { frame, ...place(option.part) } as Parts, context)),
    }));
  const cells = frame.details.cellPositions.flatMap((cellAt) =>
    on(options.cells, FRAME_CELL, (cell) => ({ cell, cellAt })).map((each) => ({ ...each, cellAt })),
  );
  const beside = combine(
    on(options.extensometers, FRAME_EXTENSOMETER, (extensometer) => ({ extensometer })),
    on(options.chambers, FRAME_CHAMBER, (chamber) => ({ chamber })),
    on(options.guards, FRAME_GUARD, (guard) => ({ guard })),
    on(options.thermocouples, FRAME_THERMOCOUPLE, (thermocouple) => ({ thermocouple })),
  );
  return { cells, ends: on(options.ends, FRAME_ENDS, (ends) => ({ ends })), beside };
}

function added(a: Tally, b: Tally): Tally {
  return { fails: a.fails | b.fails, cautions: a.cautions | b.cautions, severity: a.severity + b.severity };
}

function combine(
  extensometers: readonly OnFrame<Extensometer | null>[],
  chambers: readonly OnFrame<Chamber | null>[],
  guards: readonly OnFrame<Guard | null>[],
  thermocouples: readonly OnFrame<Transducer | null>[],
): Omit<Beside, 'points'>[] {
  const all: Omit<Beside, 'points'>[] = [];
  for (const extensometer of extensometers)
    for (const chamber of chambers)
      for (const guard of guards)
        for (const thermocouple of thermocouples) {
          const four = [extensometer, chamber, guard, thermocouple];
          all.push({
            extensometer,
            chamber,
            guard,
            thermocouple,
            fails: four.reduce((bits, each) => bits | each.fails, 0),
            cautions: four.reduce((bits, each) => bits | each.cautions, 0),
            severity: four.reduce((sum, each) => sum + each.severity, 0),
          });
        }
  return all;
}

/** What the lab and the frame alone fail and caution. */
export function frameTally(frame: Parts['frame'], context: RequestContext): Tally {
  const parts = { frame } as Parts;
  return added(tally(LAB, parts, context), tally(FRAME, parts, context));
}

/**
 * The best trains on a frame, best first, none failing anything. Choices are tried in order of their own points, and the loop stops
 * where even the best of the rest cannot beat what was found.
 *
 * @param most how many to keep
 */
export function bestTrains(
  { frame, rig, fitted }: IndexedFrame,
  choices: ClassOptions,
  search: Search,
  most: number,
): Found[] {
  const { context, index } = search;
  const own = frameTally(frame, context);
  if (own.fails !== 0) return [];
  const { settings, needs } = context;
  const cost = pricing(search, fitted);
  const cells = priced(
    choices.cells,
    (each) =>
      cost(each) + forceFitPoints(frame, each.part, needs, settings) + accuracyPoints(each.part, needs, settings),
  );
  const ends = priced(choices.ends, cost);
  const beside = priced(
    choices.beside,
    (each) => cost(each.extensometer) + cost(each.chamber) + cost(each.guard) + cost(each.thermocouple),
  );
  if (cells.length === 0 || ends.length === 0 || beside.length === 0) return [];
  const hanging = rig.itemIds.flatMap((id) => index.byId.get(id) ?? []);
  const perMin = settings.weights.changeoverPerMin;
  // Adapters are priced last, each for itself, so that what comes before is never more than the whole.
  const base =
    perMin *
    clearMinutes(
      hanging.filter(({ kind }) => kind !== 'adapter'),
      settings,
    );
  const site: Site = {
    frame,
    fitted,
    own,
    base,
    adaptersOff:
      perMin *
      clearMinutes(
        hanging.filter(({ kind }) => kind === 'adapter'),
        settings,
      ),
    cost,
  };
  const kept: Found[] = [];
  const bar = () => (kept.length < most ? Infinity : kept.at(-1)!.points);
  for (const cell of cells) {
    if (base + cell.points + ends[0]!.points + beside[0]!.points >= bar()) break;
    for (const end of ends) {
      if (base + cell.points + end.points + beside[0]!.points >= bar()) break;
      const found = assemble(site, cell, end, beside, search);
      if (found && found.points < bar()) keep(kept, found, most);
    }
  }
  return kept;
}

function keep(kept: Found[], found: Found, most: number): void {
  const at = kept.findIndex(({ points }) => points > found.points);
  kept.splice(at === -1 ? kept.length : at, 0, found);
  kept.length = Math.min(kept.length, most);
}

type Priced<T> = T & { points: number };

/** Choices without a failure, cheapest first; equal ones stay in the order of their tags. */
function priced<T extends Tally>(list: readonly T[], points: (each: T) => number): Priced<T>[] {
  return list
    .filter(({ fails }) => fails === 0)
    .map((each) => ({ ...each, points: points(each) }))
    .sort((a, b) => a.points - b.points);
}

type Pricing = (option: { units: Option<unknown>['units'] }) => number;

/** Points of a choice for changeover and scarcity on a frame. */
function pricing({ context: { settings } }: Search, fitted: ReadonlySet<string>): Pricing {
  return ({ units }) =>
    units.reduce((sum, list) => {
      const hanging = list.find(({ id }) => fitted.has(id));
      const minutes = changeMinutes(hanging ?? list[0]!, hanging !== undefined, settings);
      return sum + settings.weights.changeoverPerMin * minutes + scarcePoints(list.length, settings);
    }, 0);
}

/** What a frame brings to each of its trains. */
interface Site {
  frame: Parts['frame'];
  fitted: ReadonlySet<string>;
  own: Tally;
  base: number;
  adaptersOff: number;
  cost: Pricing;
}

function assemble(
  site: Site,
  cell: Priced<CellOnFrame>,
  end: Priced<OnFrame<Ends>>,
  besides: readonly Priced<Omit<Beside, 'points'>>[],
  search: Search,
): Found | null {
  const joined = search.routes.join({ frame: site.frame, cell: cell.part, cellAt: cell.cellAt, ends: end.part }, false);
  if (!joined) return null;
  const { adapters, units: adapterUnits } = preferFitted(joined, site.fitted, search.routes);
  for (const beside of besides) {
    const parts = partsOf(site.frame, cell, end.part, adapters, beside);
    const whole = tally(WHOLE, parts, search.context);
    if (whole.fails === 0) {
      const cautions = countBits(site.own.cautions | cell.cautions | end.cautions | beside.cautions | whole.cautions);
      const adapterPoints =
        site.adaptersOff +
        adapterUnits.reduce((sum, [own, pool]) => sum + adapterCost(own, pool.length, site, search), 0);
      const points =
        site.base +
        cell.points +
        end.points +
        beside.points +
        adapterPoints +
        search.context.settings.weights.caution * cautions;
      return { parts, units: unitsOf([cell, end, ...four(beside)], adapterUnits), points, fails: 0 };
    }
    if ((whole.fails & ~BESIDE) !== 0) return null;
  }
  return null;
}

function adapterCost(own: Adapter, poolSize: number, { fitted }: Site, { context: { settings } }: Search): number {
  return (
    settings.weights.changeoverPerMin * changeMinutes(own, fitted.has(own.id), settings) +
    scarcePoints(poolSize, settings)
  );
}

/** The same adapters, by the units that hang on the frame already where there are any; never one unit twice. */
function preferFitted(
  adapters: Adapters,
  fitted: ReadonlySet<string>,
  routes: Routes,
): { adapters: Adapters; units: [Adapter, readonly Adapter[]][] } {
  const taken = new Set<string>();
  const units: [Adapter, readonly Adapter[]][] = [];
  const choose = (adapter: Adapter): Adapter => {
    const pool = routes.poolOf(adapter);
    const free = pool.filter(({ id }) => !taken.has(id));
    const own = free.find(({ id }) => fitted.has(id)) ?? free[0]!;
    taken.add(own.id);
    units.push([own, pool]);
    return own;
  };
  return { adapters: { upper: adapters.upper.map(choose), lower: adapters.lower.map(choose) }, units };
}

function four({ extensometer, chamber, guard, thermocouple }: Omit<Beside, 'points'>): OnFrame<unknown>[] {
  return [extensometer, chamber, guard, thermocouple];
}

function partsOf(
  frame: Parts['frame'],
  cell: CellOnFrame,
  ends: Ends,
  adapters: Parts['adapters'],
  beside: Omit<Beside, 'points'>,
): Parts {
  return {
    frame,
    cell: cell.part,
    cellAt: cell.cellAt,
    adapters,
    ends,
    extensometer: beside.extensometer.part,
    chamber: beside.chamber.part,
    guard: beside.guard.part,
    thermocouple: beside.thermocouple.part,
  };
}

function unitsOf(
  options: readonly { units: Option<unknown>['units'] }[],
  adapters: readonly [Adapter, readonly Adapter[]][],
): Map<string, readonly Item[]> {
  const lists = options.flatMap(({ units }) => units).map((list) => [list[0]!.id, list] as const);
  return new Map<string, readonly Item[]>([...lists, ...adapters.map(([own, pool]) => [own.id, pool] as const)]);
}

/**
 * The train that comes nearest on a frame without a candidate: fewest rules failing, then least short.
 *
 * @returns null when the lab has no cell or no ends of the right kind at all
 */
export function nearestTrain({ frame }: IndexedFrame, choices: ClassOptions, search: Search): Found | null {
  const own = frameTally(frame, search.context);
  const cells = byFails(choices.cells, own.fails);
  const ends = byFails(choices.ends, own.fails);
  const besides = leastByMask(choices.beside);
  let best: Found | null = null;
  let least = Infinity;
  let severity = Infinity;
  for (const cell of cells) {
    if (cell.count > least) break;
    for (const end of ends) {
      if (Math.max(cell.count, end.count) > least) break;
      const bits = own.fails | cell.fails | end.fails;
      if (countBits(bits) >= least) continue;
      const adapters = search.routes.join({ frame, cell: cell.part, cellAt: cell.cellAt, ends: end.part }, true);
      for (const beside of besides) {
        const known = bits | beside.fails | (adapters ? 0 : COUPLINGS);
        if (countBits(known) >= least) continue;
        const parts = partsOf(frame, cell, end.part, adapters ?? { upper: [], lower: [] }, beside);
        const whole = tally(WHOLE, parts, search.context);
        const loose = tally(ADAPTERS, parts, search.context);
        const fails = known | whole.fails | loose.fails;
        const short = own.severity + cell.severity + end.severity + beside.severity + whole.severity + loose.severity;
        const count = countBits(fails);
        if (count > least || (count === least && short >= severity)) continue;
        [least, severity] = [count, short];
        best = { parts, units: new Map(), points: short, fails };
      }
    }
  }
  return best;
}

function byFails<T extends Tally>(list: readonly T[], own: number): (T & { count: number })[] {
  return list
    .map((each) => ({ ...each, count: countBits(each.fails | own) }))
    .sort((a, b) => a.count - b.count || a.severity - b.severity);
}

/** Of the choices beside the specimen that fail the same rules, the one that is least short; chambers differ in what they take. */
function leastByMask(list: readonly Omit<Beside, 'points'>[]): Omit<Beside, 'points'>[] {
  const best = new Map<string, Omit<Beside, 'points'>>();
  for (const each of list) {
    const key = `${each.fails} ${each.chamber.part?.id}`;
    const held = best.get(key);
    if (!held || each.severity < held.severity) best.set(key, each);
  }
  return [...best.values()].sort((a, b) => countBits(a.fails) - countBits(b.fails) || a.severity - b.severity);
}
