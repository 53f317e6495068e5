import { meets } from '../couplings.js';
import type { CellPosition, Frame, JawFace, LoadCell } from '../item.js';
import { seatOf } from '../parts.js';
import type { Ends, Parts } from '../parts.js';
import { cautionsUnlessFailing, checksOf, tally } from './checks.js';
import type { BitCheck, Tally } from './checks.js';
import type { Option, Options } from './options.js';
import type { RequestContext } from './request-context.js';

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
  units: Option<T>['units'];
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

/** The way in which a choice is judged with a frame; null drops it. */
export type Judge = <T>(
  option: Option<T>,
  checks: readonly BitCheck[],
  parts: Parts,
  context: RequestContext,
) => Choice<T> | null;

/** Drops what fails anything. */
export const SOUND: Judge = ({ part, units, tally: own }, checks, parts, context) => {
  if (own.fails !== 0) return null;
  const cautions = cautionsUnlessFailing(checks, parts, context);
  return cautions === null ? null : { part, units, fails: 0, cautions: own.cautions | cautions, severity: 0 };
};

/** Keeps all, and counts what fails. */
export const ANY: Judge = ({ part, units, tally: own }, checks, parts, context) => {
  const { fails, cautions, severity } = tally(checks, parts, context);
  return {
    part,
    units,
    fails: own.fails | fails,
    cautions: own.cautions | cautions,
    severity: own.severity + severity,
  };
};

const NO_FACES: readonly Choice<JawFace | null>[] = [{ part: null, units: [], fails: 0, cautions: 0, severity: 0 }];

/** The choices on frames of one class under one way of judging. Each list is made when it is first asked for. */
export class ClassChoices {
  private readonly scratch: Parts;
  private cellList: readonly CellChoice[] | null = null;
  private readonly endChoices = new Map<Option<Ends>, Choice<Ends> | null>();
  private besideList: readonly BesideChoice[] | null = null;
  private readonly endCautions = new Map<Option<Ends>, number | null>();
  private readonly faceCautions = new Map<Option<JawFace | null>, number | null>();
  private readonly faceLists = new Map<string, readonly Choice<JawFace | null>[]>();

  constructor(
    private readonly frame: Frame,
    private readonly options: Options,
    private readonly context: RequestContext,
    private readonly judge: Judge,
  ) {
    this.scratch = { frame } as Partial<Parts> as Parts;
  }

  get cells(): readonly CellChoice[] {
    this.cellList ??= this.frame.details.cellPositions.flatMap((cellAt) =>
      this.on(this.cellOptions(cellAt), FRAME_CELL, (cell) => Object.assign(this.scratch, { cell, cellAt })).map(
        (each) => Object.assign(each, { cellAt }),
      ),
    );
    return this.cellList;
  }

  /** Where only sound choices count, cells that do not meet the frame are left out before any rule is asked. */
  private cellOptions(cellAt: CellPosition): readonly Option<LoadCell>[] {
    if (this.judge !== SOUND) return this.options.cells;
    const { crossheadCoupling, baseCoupling } = this.frame.details;
    const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
    return this.options.cells.filter(
      ({ part, tally: { fails } }) => fails === 0 && meets(seat, part.details.frameCoupling),
    );
  }

  /** One option for the ends, judged with the frame. */
  endsWith(option: Option<Ends>): Choice<Ends> | null {
    const found = this.endChoices.get(option);
    if (found !== undefined) return found;
    this.scratch.ends = option.part;
    const choice = this.judge(option, FRAME_ENDS, this.scratch, this.context);
    this.endChoices.set(option, choice);
    return choice;
  }

  /** Bits of the cautions of sound ends on this frame; null when they fail here. */
  cautionsOfEnds(option: Option<Ends>): number | null {
    const found = this.endCautions.get(option);
    if (found !== undefined) return found;
    this.scratch.ends = option.part;
    const cautions = withOwn(cautionsUnlessFailing(FRAME_ENDS, this.scratch, this.context), option);
    this.endCautions.set(option, cautions);
    return cautions;
  }

  /** The same for faces. */
  cautionsOfFaces(option: Option<JawFace | null>): number | null {
    const found = this.faceCautions.get(option);
    if (found !== undefined) return found;
    this.scratch.faces = option.part;
    const cautions = withOwn(cautionsUnlessFailing(FRAME_FACES, this.scratch, this.context), option);
    this.faceCautions.set(option, cautions);
    return cautions;
  }

  /** Faces for the seat of these ends; nothing, as one choice, where there is no seat. */
  facesFor(ends: Ends): readonly Choice<JawFace | null>[] {
    const seat = seatOf(ends);
    if (seat === null) return NO_FACES;
    const found = this.faceLists.get(seat);
    if (found) return found;
    const made: readonly Choice<JawFace | null>[] = this.on(
      this.options.faces.get(seat) ?? [],
      FRAME_FACES,
      (faces) => (this.scratch.faces = faces),
    );
    this.faceLists.set(seat, made);
    return made;
  }

  get beside(): readonly BesideChoice[] {
    const { options, scratch } = this;
    this.besideList ??= combine(
      this.on(options.extensometers, FRAME_EXTENSOMETER, (part) => (scratch.extensometer = part)),
      this.on(options.chambers, FRAME_CHAMBER, (part) => (scratch.chamber = part)),
      needed(this.on(options.guards, FRAME_GUARD, (part) => (scratch.guard = part))),
      this.on(options.thermocouples, FRAME_THERMOCOUPLE, (part) => (scratch.thermocouple = part)),
    );
    return this.besideList;
  }

  private on<T>(list: readonly Option<T>[], checks: readonly BitCheck[], place: (part: T) => void): Choice<T>[] {
    const made: Choice<T>[] = [];
    for (const option of list) {
      place(option.part);
      const choice = this.judge(option, checks, this.scratch, this.context);
      if (choice) made.push(choice);
    }
    return made;
  }
}

function withOwn(cautions: number | null, { tally: own }: Option<unknown>): number | null {
  return cautions === null ? null : cautions | own.cautions;
}

/** Where the train needs no other guard, none is thought of. */
function needed(guards: readonly BesideChoice['guard'][]): readonly BesideChoice['guard'][] {
  const without = guards.find(({ part }) => part === null);
  return without && without.fails === 0 ? [without] : guards;
}

function combine(
  extensometers: readonly BesideChoice['extensometer'][],
  chambers: readonly BesideChoice['chamber'][],
  guards: readonly BesideChoice['guard'][],
  thermocouples: readonly BesideChoice['thermocouple'][],
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
