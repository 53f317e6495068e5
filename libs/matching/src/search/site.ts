import { clearMinutes } from '../score.js';
import type { BesideChoice, CellChoice, Choice, ClassChoices } from './class-choices.js';
import type { Tally } from './checks.js';
import { freshPoints, savedPoints } from './holders.js';
import type { Fresh, Holder, HolderGroup } from './holders.js';
import type { IndexedFrame } from './lab-index.js';
import type { Search } from './whole-train.js';

export type Priced<T> = T & { points: number };

/** What a frame brings to each of its trains. Points of adapters come last, so that what comes before is never more than the whole. */
export interface Site {
  at: IndexedFrame;
  own: Tally;
  base: number;
  adaptersOff: number;
  sound: ClassChoices;
  /** Seats of the faces that hang on it. */
  seats: readonly string[];
}

export function siteOf(at: IndexedFrame, own: Tally, { index, soundFor, context: { settings } }: Search): Site {
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

/** Holders of which something hangs on the frame already; they cost less there than their group's order says. */
export function fittedIn(group: HolderGroup, { at, seats }: Site): Set<Holder> {
  const found = new Set<Holder>();
  for (const id of at.fitted) for (const holder of group.having.get(id) ?? []) found.add(holder);
  for (const seat of seats) for (const holder of group.seated.get(seat) ?? []) found.add(holder);
  return found;
}

/** A fresh choice as one on the frame; null when it fails there. */
export function onFrame<T>(
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

export interface Reachable {
  group: HolderGroup;
  /** Points of the adapters, at least. */
  adapterPoints: number;
}

/** The groups that a cell on this frame can be joined with, those with the fewest adapters first. */
export function reachable(
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

/** Cheapest first; equal ones stay in the order of their tags. */
export function priced(
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

export function besidesOf(site: Site, search: Search): Priced<BesideChoice>[] {
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
