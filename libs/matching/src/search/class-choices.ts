import type { CellPosition, LoadCell } from '../item.js';
import type { Parts } from '../parts.js';
import { checksOf } from './checks.js';
import type { Tally } from './checks.js';
import type { Units } from './choices.js';

/** Checks of a frame with one other part. */
export const FRAME_CELL = checksOf(['frame', 'cell', 'cellAt'], ['frame', 'cell']);
export const FRAME_ENDS = checksOf(['frame', 'ends']);
export const FRAME_FACES = checksOf(['frame', 'faces']);
export const FRAME_EXTENSOMETER = checksOf(['frame', 'extensometer']);
export const FRAME_CHAMBER = checksOf(['frame', 'chamber']);
export const FRAME_GUARD = checksOf(['frame', 'guard']);
export const FRAME_THERMOCOUPLE = checksOf(['frame', 'thermocouple']);

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

/** Every combination of what may stand beside the specimen. Where the train needs no other guard, none is thought of. */
export function combinations({ extensometers, chambers, guards, thermocouples }: BesideLists): BesideChoice[] {
  const all: BesideChoice[] = [];
  const without = guards.find(({ part }) => part === null);
  const needed = without && without.fails === 0 ? [without] : guards;
  for (const extensometer of extensometers)
    for (const chamber of chambers)
      for (const guard of needed)
        for (const thermocouple of thermocouples)
          all.push({
            extensometer,
            chamber,
            guard,
            thermocouple,
            fails: extensometer.fails | chamber.fails | guard.fails | thermocouple.fails,
            cautions: extensometer.cautions | chamber.cautions | guard.cautions | thermocouple.cautions,
            severity: extensometer.severity + chamber.severity + guard.severity + thermocouple.severity,
          });
  return all;
}
