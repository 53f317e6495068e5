import type { Item } from '../register/item.js';
import { changeMinutes, scarcePoints } from './score.js';
import type { MatchSettings } from '../ask/settings.js';
import { PART_CAUTIONS } from './checks.js';
import type { SoundOption } from './choices.js';
import { ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';

/** A sound choice with its points on a frame where none of it hangs yet. */
export interface Fresh<T> {
  option: SoundOption<T>;
  points: number;
}

/** These options, cheapest first; equal ones stay in their order. */
export function freshest<T>(
  options: readonly SoundOption<T>[],
  settings: MatchSettings,
  more: (part: T) => number = () => 0,
): Fresh<T>[] {
  const fresh: Fresh<T>[] = [];
  for (const option of options) {
    const { part, units, cautions } = option;
    fresh.push({ option, points: freshPoints(units, cautions, settings) + more(part) });
  }
  return fresh.sort(cheaperFirst);
}

export function cheaperFirst(a: { points: number }, b: { points: number }): number {
  return a.points < b.points ? -1 : a.points > b.points ? 1 : 0;
}

/** Points for putting a choice on and for how few units it has, with the cautions that are its own. */
export function freshPoints(units: readonly (readonly Item[])[], cautions: RuleSet, settings: MatchSettings): number {
  const { changeoverPerMin, caution } = settings.weights;
  let points = caution * ruleSets.count(ruleSets.common(cautions, PART_CAUTIONS));
  for (const list of units)
    points += changeoverPerMin * changeMinutes(list[0]!, false, settings) + scarcePoints(list.length, settings);
  return points;
}

/** What is saved, as points, because units of a choice hang on the frame already. */
export function savedPoints(
  units: readonly (readonly Item[])[],
  fitted: ReadonlySet<string>,
  settings: MatchSettings,
): number {
  if (fitted.size === 0) return 0;
  let saved = 0;
  for (const list of units) {
    const hanging = list.find(({ id }) => fitted.has(id));
    if (hanging) saved += changeMinutes(list[0]!, false, settings) - changeMinutes(hanging, true, settings);
  }
  return settings.weights.changeoverPerMin * saved;
}
