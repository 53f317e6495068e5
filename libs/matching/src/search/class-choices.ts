import type { CellPosition, LoadCell } from '../register/item.js';
import type { Parts } from '../rules/parts.js';
import type { Tally } from './checks.js';
import type { Units } from './choices.js';
import { NO_RULES, ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';

/** A choice for a part together with what its own checks and those with the frame say. */
export interface Choice<T> extends Tally {
  part: T;
  units: Units;
}

export interface CellChoice extends Choice<LoadCell> {
  cellAt: CellPosition;
}

/** What stands beside the specimen; null is nothing. */
export interface BesideChoice extends Tally {
  extensometer: Choice<Parts['extensometer']>;
  chamber: Choice<Parts['chamber']>;
  guard: Choice<Parts['guard']>;
  thermocouple: Choice<Parts['thermocouple']>;
}

/** Lists of what may stand beside the specimen, part by part. */
export interface BesideLists {
  extensometers: readonly BesideChoice['extensometer'][];
  chambers: readonly BesideChoice['chamber'][];
  guards: readonly BesideChoice['guard'][];
  thermocouples: readonly BesideChoice['thermocouple'][];
}

/** Every combination of what may stand beside the specimen. Where no guard is needed, guards are left out. */
export function combinations({ extensometers, chambers, guards, thermocouples }: BesideLists): BesideChoice[] {
  const all: BesideChoice[] = [];
  const without = guards.find(({ part }) => part === null);
  const needed = without && without.fails === NO_RULES ? [without] : guards;
  for (const extensometer of extensometers)
    for (const chamber of chambers)
      for (const guard of needed)
        for (const thermocouple of thermocouples)
          all.push({
            extensometer,
            chamber,
            guard,
            thermocouple,
            fails: unionOf(extensometer.fails, chamber.fails, guard.fails, thermocouple.fails),
            cautions: unionOf(extensometer.cautions, chamber.cautions, guard.cautions, thermocouple.cautions),
            severity: extensometer.severity + chamber.severity + guard.severity + thermocouple.severity,
          });
  return all;
}

function unionOf(a: RuleSet, b: RuleSet, c: RuleSet, d: RuleSet): RuleSet {
  return ruleSets.union(ruleSets.union(a, b), ruleSets.union(c, d));
}
