import type { Adapter } from '../register/item.js';
import { endItems, massOnCellKg, NO_ADAPTERS } from '../rules/parts.js';
import { areNeverTogether, isAlways } from '../rules/calibration-in-force.js';
import { bothEnds } from '../rules/each-item.js';
import { isTooHeavy } from '../rules/cell-capacity.js';
import { adapterRoomMm } from '../rules/test-space.js';
import type { Adapters, Ends, Parts } from '../rules/parts.js';
import { changeMinutes, scarcePoints } from './score.js';
import { ADAPTER_RULES, BESIDE_RULES, PART_CAUTIONS, tally, WEIGHT_RULES, WHOLE_CHECKS } from './checks.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import type { Holder } from './holders.js';
import type { RankedCell } from './cell-ranks.js';
import type { Reachable } from './reach.js';
import type { Joinings } from './routes.js';
import { besidesOf, cellOnFrame, cellsOf, fittedIn, onFrame } from './site.js';
import type { Priced, Site } from './site.js';
import { standBeside, trainOf } from './whole-train.js';
import { NO_RULES, ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';
import type { Search } from './search.js';

/** A train that the search found, with the units that could take each of its places. */
export interface Found {
  parts: Parts;
  cell: Choice<unknown>;
  ends: Choice<unknown>;
  faces: Choice<unknown>;
  beside: BesideChoice;
  adapterPools: AdapterPools;
  points: number;
}

/** How many more trains are tried once enough were found. In a large lab many choices hardly differ. */
const TRIES_FOR_BETTER = 6;

/**
 * The best trains on a frame that pass every rule, best first. Choices are tried in the order of their own points. The search stops
 * when the rest cannot beat what was found, or after some tries that found nothing better.
 *
 * @param most how many to keep
 * @param inSpite search even if the frame alone, or the lab, fails a rule
 */
export function bestTrains(site: Site, search: Search, most: number, inSpite = false): Found[] {
  if (site.own.fails !== NO_RULES && !inSpite) return [];
  const cells = cellsOf(site, search);
  if (cells.length === 0) return [];
  const besides = besidesOf(site, search);
  return besides.length === 0 ? [] : new FrameSearch(site, search, most, TRIES_FOR_BETTER, besides).through(cells);
}

/** Whether any train passes on a frame. It stops at the first one. */
export function hasTrain(site: Site, search: Search): boolean {
  if (site.own.fails !== NO_RULES) return false;
  const cells = cellsOf(site, search);
  if (cells.length === 0) return false;
  const besides = besidesOf(site, search);
  return besides.length > 0 && new FrameSearch(site, search, 1, 0, besides).through(cells).length > 0;
}

/** The search for the best trains on one frame. */
class FrameSearch {
  private readonly kept: Found[] = [];
  /** A train with as many points or more is not kept. */
  private bar = Infinity;

  constructor(
    private readonly site: Site,
    private readonly search: Search,
    private readonly most: number,
    private tries: number,
    private readonly besides: readonly Priced<BesideChoice>[],
  ) {}

  through(cells: readonly RankedCell[]): Found[] {
    const { site, search } = this;
    if (areNeverTogether([site.at.frame], search.context)) return [];
    const least = site.base + this.besides[0]!.points;
    const open = { frame: site.at.frame, cell: cells[0]!.option.part, cellAt: cells[0]!.cellAt };
    for (const ranked of cells) {
      if (least + ranked.points >= this.bar) break;
      const cell = cellOnFrame(ranked, site);
      if (!cell || this.isNever(cell, null)) continue;
      open.cell = cell.part;
      open.cellAt = cell.cellAt;
      for (const reachable of search.reach.from(open, site.adaptersOff > 0))
        this.throughGroup(cell, reachable, least + cell.points + reachable.adapterPoints);
    }
    return this.kept;
  }

  private throughGroup(cell: Priced<CellChoice>, { group, joinings }: Reachable, before: number): void {
    const first = fittedIn(group, this.site);
    for (const holder of first) this.tryFaces(holder, true, cell, joinings, before);
    for (const holder of group.holders) {
      if (before + holder.points >= this.bar) break;
      if (!first.includes(holder)) this.tryFaces(holder, false, cell, joinings, before);
    }
  }

  private tryFaces(
    holder: Holder,
    fitted: boolean,
    cell: Priced<CellChoice>,
    joinings: Joinings,
    before: number,
  ): void {
    const { site, search } = this;
    const end = onFrame(holder.ends, site.sound.cautionsOfEnds(holder.ends.option), fitted, site, search);
    if (!end || this.isNever(cell, end.part)) return;
    for (const fresh of holder.faces) {
      if (!fitted && before + end.points + fresh.points >= this.bar) return;
      const faces = onFrame(fresh, site.sound.cautionsOfFaces(fresh.option), fitted, site, search);
      if (!faces || before + end.points + faces.points >= this.bar) continue;
      const train = this.assemble(cell, end, faces, joinings);
      if (train === 'hopeless') return;
      this.tried(train);
    }
  }

  /**
   * Whether frame, cell and ends are never usable at the same time. It is checked only while too few trains were found: later a train
   * that fails for this reason counts as one of the tries.
   */
  private isNever({ part: cell }: CellChoice, ends: Ends | null): boolean {
    if (this.kept.length === this.most) return false;
    const { context } = this.search;
    const { frame } = this.site.at;
    if (isAlways(frame, context) && isAlways(cell, context) && (!ends || bothEnds(ends, context, isAlways)))
      return false;
    return areNeverTogether([frame, cell, ...(ends ? endItems(ends) : [])], context);
  }

  private tried(found: Found | null): void {
    const { kept, most } = this;
    if (kept.length === most) this.tries -= 1;
    if (found) {
      const place = kept.findIndex(({ points }) => points > found.points);
      kept.splice(place === -1 ? kept.length : place, 0, found);
      kept.length = Math.min(kept.length, most);
    }
    if (kept.length === most) this.bar = this.tries <= 0 ? -Infinity : kept.at(-1)!.points;
  }

  /**
   * Adds adapters, and what stands beside the specimen, to these choices.
   *
   * @returns the train if it passes and costs less than the bar; `hopeless` when other faces could not change that
   */
  private assemble(
    cell: Priced<CellChoice>,
    end: Priced<Choice<Ends>>,
    faces: Priced<Choice<Parts['faces']>>,
    joinings: Joinings,
  ): Found | null | 'hopeless' {
    const { frame } = this.site.at;
    const { context } = this.search;
    const parts = trainOf(frame, cell, end, faces, NO_ADAPTERS, this.besides[0]!);
    const room = adapterRoomMm(parts, context);
    if (room.most < 0 || room.most < room.least) return 'hopeless';
    const heldKg = massOnCellKg(parts);
    const leastKg = heldKg - (faces.part?.massKg ?? 0);
    if (isTooHeavy(cell.part, cell.cellAt, leastKg, context)) return 'hopeless';
    let joinable = false;
    let tooHeavyKg = Infinity;
    for (let n = 0, next = joinings.nth(0); next; n += 1, next = joinings.nth(n)) {
      const { lengthMm, upperKg, lowerKg } = next;
      if (lengthMm < room.least || lengthMm > room.most) continue;
      joinable = true;
      const hungKg = heldKg + (cell.cellAt === 'crosshead' ? upperKg : lowerKg);
      if (hungKg >= tooHeavyKg) continue;
      if (isTooHeavy(cell.part, cell.cellAt, hungKg, context)) {
        tooHeavyKg = hungKg;
        continue;
      }
      parts.adapters = next.adapters;
      for (const beside of this.besides) {
        standBeside(parts, beside);
        const whole = tally(WHOLE_CHECKS, parts, context);
        if (whole.fails === NO_RULES) return this.finished(parts, cell, end, faces, beside, whole.cautions);
        if (isAny(whole.fails, WEIGHT_RULES)) tooHeavyKg = hungKg;
        if (!isOnly(whole.fails, ADAPTER_RULES)) return null;
        if (!isOnly(whole.fails, BESIDE_RULES)) break;
      }
    }
    return joinable ? null : 'hopeless';
  }

  /** A train that passes, with its points and units; null when it does not cost less than the bar. */
  private finished(
    parts: Parts,
    cell: Priced<CellChoice>,
    ends: Priced<Choice<Ends>>,
    faces: Priced<Choice<Parts['faces']>>,
    beside: Priced<BesideChoice>,
    wholeCautions: RuleSet,
  ): Found | null {
    const { site, search } = this;
    const { adapters, pools } = preferFitted(parts.adapters, site, search);
    const cautions = [site.own, beside, cell, ends, faces].reduce(
      (all, each) => ruleSets.union(all, each.cautions),
      wholeCautions,
    );
    const points =
      beside.points +
      cell.points +
      ends.points +
      faces.points +
      fixedPoints(site, pools, ruleSets.count(ruleSets.without(cautions, PART_CAUTIONS)), search);
    if (points >= this.bar) return null;
    parts.adapters = adapters;
    return { parts, cell, ends, faces, beside, adapterPools: pools, points };
  }
}

function isAny(fails: RuleSet, of: RuleSet): boolean {
  return ruleSets.common(fails, of) !== NO_RULES;
}

function isOnly(fails: RuleSet, of: RuleSet): boolean {
  return ruleSets.without(fails, of) === NO_RULES;
}

/** For each adapter of a train, itself and its equals. */
export type AdapterPools = readonly (readonly [Adapter, readonly Adapter[]])[];

/** Points that do not belong to one choice: clearing the frame, adapters, cautions of several parts. */
function fixedPoints(
  { at, base, adaptersOff }: Site,
  pools: AdapterPools,
  cautions: number,
  { context: { settings } }: Search,
): number {
  const { changeoverPerMin, caution } = settings.weights;
  let adapterPoints = 0;
  for (const [own, pool] of pools)
    adapterPoints +=
      changeoverPerMin * changeMinutes(own, at.fitted.has(own.id), settings) + scarcePoints(pool.length, settings);
  return base + adaptersOff + adapterPoints + caution * cautions;
}

/** Equal adapters, if possible those that hang on the frame already. No unit is used twice. */
function preferFitted(
  adapters: Adapters,
  { at }: Site,
  { routes }: Search,
): { adapters: Adapters; pools: AdapterPools } {
  if (adapters.upper.length + adapters.lower.length === 0) return { adapters, pools: [] };
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
