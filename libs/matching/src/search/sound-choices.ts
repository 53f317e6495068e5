import { meets } from '../couplings.js';
import type { CellPosition, Frame, JawFace, LoadCell } from '../item.js';
import type { Ends, Parts } from '../parts.js';
import { cautionsUnlessFailing } from './checks.js';
import type { BitCheck } from './checks.js';
import {
  combinations,
  FRAME_CELL,
  FRAME_CHAMBER,
  FRAME_ENDS,
  FRAME_EXTENSOMETER,
  FRAME_FACES,
  FRAME_GUARD,
  FRAME_THERMOCOUPLE,
} from './class-choices.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { cheaperFirst, freshPoints } from './fresh.js';
import type { Option, Options } from './options.js';
import type { RequestContext } from './request-context.js';

/** The choices that fail nothing on frames of one class. Each is judged when it is first asked for. */
export class SoundChoices {
  private readonly scratch: Parts;
  private besideList: readonly (BesideChoice & { points: number })[] | null = null;
  private readonly cellCautions = new Map<Option<LoadCell>, Map<CellPosition, number | null>>();
  private readonly endCautions = new Map<Option<Ends>, number | null>();
  private readonly faceCautions = new Map<Option<JawFace | null>, number | null>();

  constructor(
    private readonly frame: Frame,
    private readonly options: Options,
    private readonly context: RequestContext,
  ) {
    this.scratch = { frame } as Partial<Parts> as Parts;
  }

  /** The sound cells that meet the frame, in the order of the options. */
  get cells(): readonly CellChoice[] {
    const { cellPositions, crossheadCoupling, baseCoupling } = this.frame.details;
    return cellPositions.flatMap((cellAt) => {
      const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
      return this.options.cells.flatMap((option): CellChoice[] => {
        const { part, units, tally } = option;
        if (tally.fails !== 0 || !meets(seat, part.details.frameCoupling)) return [];
        const cautions = this.cautionsOfCell(option, cellAt);
        return cautions === null ? [] : [{ part, units, cellAt, fails: 0, cautions, severity: 0 }];
      });
    });
  }

  /** Bits of the cautions of a sound cell on this frame; null when it fails here. */
  cautionsOfCell(option: Option<LoadCell>, cellAt: CellPosition): number | null {
    const places = this.cellCautions.get(option) ?? new Map<CellPosition, number | null>();
    this.cellCautions.set(option, places);
    this.scratch.cell = option.part;
    this.scratch.cellAt = cellAt;
    return this.remembered(places, cellAt, option, FRAME_CELL);
  }

  /** The same for ends. */
  cautionsOfEnds(option: Option<Ends>): number | null {
    this.scratch.ends = option.part;
    return this.remembered(this.endCautions, option, option, FRAME_ENDS);
  }

  /** The same for faces. */
  cautionsOfFaces(option: Option<JawFace | null>): number | null {
    this.scratch.faces = option.part;
    return this.remembered(this.faceCautions, option, option, FRAME_FACES);
  }

  /** What may stand beside the specimen, with its points where none of it hangs yet, cheapest first. */
  get beside(): readonly (BesideChoice & { points: number })[] {
    this.besideList ??= this.pricedBeside();
    return this.besideList;
  }

  private pricedBeside(): (BesideChoice & { points: number })[] {
    const { options, scratch } = this;
    const lists = {
      extensometers: this.on(options.extensometers, FRAME_EXTENSOMETER, (part) => (scratch.extensometer = part)),
      chambers: this.on(options.chambers, FRAME_CHAMBER, (part) => (scratch.chamber = part)),
      guards: this.on(options.guards, FRAME_GUARD, (part) => (scratch.guard = part)),
      thermocouples: this.on(options.thermocouples, FRAME_THERMOCOUPLE, (part) => (scratch.thermocouple = part)),
    };
    const points = new Map(
      Object.values(lists).flatMap((list: readonly Choice<unknown>[]) =>
        list.map((each) => [each, freshPoints(each.units, each.cautions, this.context.settings)] as const),
      ),
    );
    const of = (choice: Choice<unknown>) => points.get(choice)!;
    return combinations(lists)
      .map((each) => ({
        ...each,
        points: of(each.extensometer) + of(each.chamber) + of(each.guard) + of(each.thermocouple),
      }))
      .sort(cheaperFirst);
  }

  private on<T>(list: readonly Option<T>[], checks: readonly BitCheck[], place: (part: T) => void): Choice<T>[] {
    const sound: Choice<T>[] = [];
    for (const option of list) {
      const { part, units, tally } = option;
      if (tally.fails !== 0) continue;
      place(part);
      const cautions = withOwn(cautionsUnlessFailing(checks, this.scratch, this.context), option);
      if (cautions !== null) sound.push({ part, units, fails: 0, cautions, severity: 0 });
    }
    return sound;
  }

  private remembered<K>(
    known: Map<K, number | null>,
    key: K,
    option: Option<unknown>,
    checks: readonly BitCheck[],
  ): number | null {
    const found = known.get(key);
    if (found !== undefined) return found;
    const cautions = withOwn(cautionsUnlessFailing(checks, this.scratch, this.context), option);
    known.set(key, cautions);
    return cautions;
  }
}

function withOwn(cautions: number | null, { tally: own }: Option<unknown>): number | null {
  return cautions === null ? null : cautions | own.cautions;
}
