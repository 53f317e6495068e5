import { clearMinutes, frameFitPoints } from './score.js';
import type { RankedCell } from './cell-ranks.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import type { Tally } from './checks.js';
import { frameTally } from './frame-tally.js';
import { cheaperFirst, savedPoints } from './fresh.js';
import type { Fresh } from './fresh.js';
import type { Holder, HolderGroup } from './holders.js';
import type { IndexedFrame } from './lab-index.js';
import { NO_RULES } from './rule-set.js';
import type { RuleSet } from './rule-set.js';
import type { Search } from './search.js';
import type { SoundChoices } from './sound-choices.js';

export type Priced<T> = T & { points: number };

/** What a frame contributes to each of its trains. Points of adapters are added last, so that a partial sum never exceeds the total. */
export class Site {
  /** What frame and lab fail and caution alone. */
  readonly own: Tally;
  readonly base: number;
  readonly adaptersOff: number;
  /** Holders of which something hangs there already, by their group. */
  readonly fitted = new Map<HolderGroup, readonly Holder[]>();
  #sound: SoundChoices | null = null;
  readonly #search: Search;

  constructor(
    readonly at: IndexedFrame,
    search: Search,
  ) {
    const { settings, needs } = search.context;
    const perMin = settings.weights.changeoverPerMin;
    this.own = frameTally(at.frame, search.context, search.ofLab);
    this.base = perMin * clearMinutes(at.others, settings) + frameFitPoints(at.frame, needs, settings);
    this.adaptersOff = perMin * clearMinutes(at.adapters, settings);
    this.#search = search;
  }

  /** The choices that fail no rule there, made on first use: a frame that fails by itself needs none. */
  get sound(): SoundChoices {
    return (this.#sound ??= this.#search.soundFor(this.at.frame));
  }
}

const NONE: readonly Holder[] = [];

/** Holders of which a part hangs on the frame already. They cost less there than their place in the group says. */
export function fittedIn(group: HolderGroup, { at, fitted }: Site): readonly Holder[] {
  if (at.fitted.size === 0) return NONE;
  const known = fitted.get(group);
  if (known) return known;
  const found: Holder[] = [];
  const take = (holder: Holder) => {
    if (!found.includes(holder)) found.push(holder);
  };
  if (group.having.size > 0) for (const id of at.fitted) group.having.get(id)?.forEach(take);
  for (const seat of at.seats) group.seated.get(seat)?.forEach(take);
  fitted.set(group, found);
  return found;
}

/**
 * A fresh choice as one on the frame; null when it fails there.
 *
 * @param fitted whether some of its units hang there, which then cost nothing to put on
 */
export function onFrame<T>(
  { option, points }: Fresh<T>,
  cautions: RuleSet | null,
  fitted: boolean,
  { at }: Site,
  { context: { settings } }: Search,
): Priced<Choice<T>> | null {
  if (cautions === null) return null;
  const saved = fitted ? savedPoints(option.units, at.fitted, settings) : 0;
  return { part: option.part, units: option.units, fails: NO_RULES, severity: 0, cautions, points: points - saved };
}

/** The cells that meet the frame, cheapest first: those that hang there already cost less than their rank says. */
export function cellsOf({ at }: Site, { cells, context: { settings } }: Search): readonly RankedCell[] {
  const ranked = cells.on(at.frame);
  const hanging = cells.having(at.fitted);
  if (hanging.length === 0) return ranked;
  const list = [...ranked];
  ranked.forEach((each, place) => {
    if (!hanging.includes(each.option)) return;
    const points = each.points - savedPoints(each.option.units, at.fitted, settings);
    let to = place;
    for (; to > 0 && list[to - 1]!.points > points; to -= 1) list[to] = list[to - 1]!;
    list[to] = { ...each, points };
  });
  return list;
}

/** A ranked cell as a choice on the frame; null when it fails there. */
export function cellOnFrame({ option, points, cellAt }: RankedCell, { sound }: Site): Priced<CellChoice> | null {
  const cautions = sound.cautionsOfCell(option, cellAt);
  if (cautions === null) return null;
  return { part: option.part, units: option.units, cellAt, fails: NO_RULES, severity: 0, cautions, points };
}

/** What may stand beside the specimen, cheapest first. */
export function besidesOf({ at, sound }: Site, { context: { settings } }: Search): readonly Priced<BesideChoice>[] {
  if (!at.besideHangs) return sound.beside;
  return sound.beside
    .map((each) => {
      const four = [each.extensometer, each.chamber, each.guard, each.thermocouple];
      const saved = four.reduce((sum, { units }) => sum + savedPoints(units, at.fitted, settings), 0);
      return saved === 0 ? each : { ...each, points: each.points - saved };
    })
    .sort(cheaperFirst);
}
