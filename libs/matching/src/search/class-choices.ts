import type { CellPosition, Chamber, Extensometer, Frame, Guard, LoadCell, Transducer } from '../item.js';
import type { Ends, Parts } from '../parts.js';
import { cautionsUnlessFailing, checksOf, tally } from './checks.js';
import type { BitCheck, Tally } from './checks.js';
import type { Option, Options } from './options.js';
import type { RequestContext } from './request-context.js';

export const FRAME_CELL = checksOf(['frame', 'cell', 'cellAt'], ['frame', 'cell']);
export const FRAME_ENDS = checksOf(['frame', 'ends']);
export const FRAME_EXTENSOMETER = checksOf(['frame', 'extensometer']);
export const FRAME_CHAMBER = checksOf(['frame', 'chamber']);
export const FRAME_GUARD = checksOf(['frame', 'guard']);
export const FRAME_THERMOCOUPLE = checksOf(['frame', 'thermocouple']);

/** A choice for a part together with what its own checks and those with the frame say. */
export interface Choice<T> extends Tally {
  part: T;
  units: Option<T>['units'];
}

export interface CellChoice extends Choice<LoadCell> {
  cellAt: CellPosition;
}

/** What stands beside the specimen; null is nothing. */
export interface BesideChoice extends Tally {
  extensometer: Choice<Extensometer | null>;
  chamber: Choice<Chamber | null>;
  guard: Choice<Guard | null>;
  thermocouple: Choice<Transducer | null>;
}

export interface Choices {
  cells: readonly CellChoice[];
  ends: readonly Choice<Ends>[];
  beside: readonly BesideChoice[];
}

/** The choices on frames of one class: those that fail nothing, and all of them. Each list is made when it is first asked for. */
export class ClassChoices {
  private soundOnes: Choices | null = null;
  private allOnes: Choices | null = null;

  constructor(
    private readonly frame: Frame,
    private readonly options: Options,
    private readonly context: RequestContext,
  ) {}

  get sound(): Choices {
    this.soundOnes ??= this.make(soundOnly);
    return this.soundOnes;
  }

  get all(): Choices {
    this.allOnes ??= this.make(everyOne);
    return this.allOnes;
  }

  private make(judge: Judge): Choices {
    const { frame, context, options } = this;
    const scratch = { frame } as Partial<Parts> as Parts;
    const on = <T>(list: readonly Option<T>[], checks: readonly BitCheck[], place: (part: T) => void): Choice<T>[] => {
      const made: Choice<T>[] = [];
      for (const option of list) {
        place(option.part);
        const choice = judge(option, checks, scratch, context);
        if (choice) made.push(choice);
      }
      return made;
    };
    const cells = frame.details.cellPositions.flatMap((cellAt) =>
      on(options.cells, FRAME_CELL, (cell) => Object.assign(scratch, { cell, cellAt })).map((each) => ({
        ...each,
        cellAt,
      })),
    );
    return {
      cells,
      ends: on(options.ends, FRAME_ENDS, (ends) => (scratch.ends = ends)),
      beside: combine(
        on(options.extensometers, FRAME_EXTENSOMETER, (part) => (scratch.extensometer = part)),
        on(options.chambers, FRAME_CHAMBER, (part) => (scratch.chamber = part)),
        on(options.guards, FRAME_GUARD, (part) => (scratch.guard = part)),
        on(options.thermocouples, FRAME_THERMOCOUPLE, (part) => (scratch.thermocouple = part)),
      ),
    };
  }
}

type Judge = <T>(
  option: Option<T>,
  checks: readonly BitCheck[],
  parts: Parts,
  context: RequestContext,
) => Choice<T> | null;

const soundOnly: Judge = ({ part, units, tally: own }, checks, parts, context) => {
  if (own.fails !== 0) return null;
  const cautions = cautionsUnlessFailing(checks, parts, context);
  return cautions === null ? null : { part, units, fails: 0, cautions: own.cautions | cautions, severity: 0 };
};

const everyOne: Judge = ({ part, units, tally: own }, checks, parts, context) => {
  const { fails, cautions, severity } = tally(checks, parts, context);
  return {
    part,
    units,
    fails: own.fails | fails,
    cautions: own.cautions | cautions,
    severity: own.severity + severity,
  };
};

function combine(
  extensometers: readonly Choice<Extensometer | null>[],
  chambers: readonly Choice<Chamber | null>[],
  guards: readonly Choice<Guard | null>[],
  thermocouples: readonly Choice<Transducer | null>[],
): BesideChoice[] {
  const all: BesideChoice[] = [];
  for (const extensometer of extensometers)
    for (const chamber of chambers)
      for (const guard of guards)
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
