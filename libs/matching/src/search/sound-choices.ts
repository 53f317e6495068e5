import { meets } from '../couplings.js';
import type { CellPosition, Chamber, Extensometer, Frame, Guard, JawFace, LoadCell, Transducer } from '../item.js';
import { blankParts } from '../parts.js';
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
import { onceAKey, traitsOf } from './frame-traits.js';
import type { FrameTraits } from './frame-traits.js';
import { cheaperFirst, freshPoints } from './fresh.js';
import type { SoundOption } from './choices.js';
import type { Options } from './options.js';
import type { RequestContext } from './request-context.js';

type PricedBeside = BesideChoice & { points: number };

/** What was found for one frame and holds for those alike, by their traits. */
export class SoundMemo {
  readonly cells = onceAKey<readonly CellChoice[]>();
  readonly cellCautions = onceAKey<Map<SoundOption<LoadCell>, Map<CellPosition, number | null>>>();
  readonly ends = onceAKey<Map<SoundOption<Ends>, number | null>>();
  readonly faces = onceAKey<Map<SoundOption<JawFace | null>, number | null>>();
  readonly extensometers = onceAKey<Choice<Extensometer | null>[]>();
  readonly chambers = onceAKey<Choice<Chamber | null>[]>();
  readonly guards = onceAKey<Choice<Guard | null>[]>();
  readonly thermocouples = onceAKey<Choice<Transducer | null>[]>();
  readonly beside = onceAKey<readonly PricedBeside[]>();
}

/** The choices that fail nothing on a frame. Each is judged when it is first asked for, once for all frames alike. */
export class SoundChoices {
  private readonly scratch: Parts;
  private readonly traits: FrameTraits;
  private readonly cellCautions: Map<SoundOption<LoadCell>, Map<CellPosition, number | null>>;
  private readonly endCautions: Map<SoundOption<Ends>, number | null>;
  private readonly faceCautions: Map<SoundOption<JawFace | null>, number | null>;

  constructor(
    private readonly frame: Frame,
    private readonly options: Options,
    private readonly context: RequestContext,
    private readonly memo: SoundMemo,
  ) {
    this.scratch = { ...blankParts(), frame };
    this.traits = traitsOf(frame);
    this.cellCautions = memo.cellCautions(this.traits.cells, () => new Map());
    this.endCautions = memo.ends(this.traits.ends, () => new Map());
    this.faceCautions = memo.faces(this.traits.faces, () => new Map());
  }

  /** The sound cells that meet the frame, in the order of the options. */
  get cells(): readonly CellChoice[] {
    return this.memo.cells(this.traits.cells, () => this.soundCells());
  }

  private soundCells(): CellChoice[] {
    const { cellPositions, crossheadCoupling, baseCoupling } = this.frame.details;
    return cellPositions.flatMap((cellAt) => {
      const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
      return this.options.cells.sound.flatMap((option): CellChoice[] => {
        const { part, units } = option;
        if (!meets(seat, part.details.frameCoupling)) return [];
        const cautions = this.cautionsOfCell(option, cellAt);
        return cautions === null ? [] : [{ part, units, cellAt, fails: 0, cautions, severity: 0 }];
      });
    });
  }

  /** Bits of the cautions of a sound cell on this frame; null when it fails here. */
  cautionsOfCell(option: SoundOption<LoadCell>, cellAt: CellPosition): number | null {
    const places = this.cellCautions.get(option) ?? new Map<CellPosition, number | null>();
    this.cellCautions.set(option, places);
    this.scratch.cell = option.part;
    this.scratch.cellAt = cellAt;
    return this.remembered(places, cellAt, option, FRAME_CELL);
  }

  /** The same for ends. */
  cautionsOfEnds(option: SoundOption<Ends>): number | null {
    this.scratch.ends = option.part;
    return this.remembered(this.endCautions, option, option, FRAME_ENDS);
  }

  /** The same for faces. */
  cautionsOfFaces(option: SoundOption<JawFace | null>): number | null {
    this.scratch.faces = option.part;
    return this.remembered(this.faceCautions, option, option, FRAME_FACES);
  }

  /** What may stand beside the specimen, with its points where none of it hangs yet, cheapest first. */
  get beside(): readonly PricedBeside[] {
    return this.memo.beside(this.traits.beside, () => this.pricedBeside());
  }

  private pricedBeside(): PricedBeside[] {
    const { options, scratch, memo, traits } = this;
    const lists = {
      extensometers: memo.extensometers(traits.extensometers, () =>
        this.on(options.extensometers.sound, FRAME_EXTENSOMETER, (part) => (scratch.extensometer = part)),
      ),
      chambers: memo.chambers(traits.chambers, () =>
        this.on(options.chambers.sound, FRAME_CHAMBER, (part) => (scratch.chamber = part)),
      ),
      guards: memo.guards(traits.guards, () =>
        this.on(options.guards.sound, FRAME_GUARD, (part) => (scratch.guard = part)),
      ),
      thermocouples: memo.thermocouples(traits.thermocouples, () =>
        this.on(options.thermocouples.sound, FRAME_THERMOCOUPLE, (part) => (scratch.thermocouple = part)),
      ),
    };
    const { settings } = this.context;
    const priced: PricedBeside[] = [];
    for (const { extensometer, chamber, guard, thermocouple, fails, cautions, severity } of combinations(lists)) {
      let points = 0;
      for (const { units, cautions: own } of [extensometer, chamber, guard, thermocouple])
        points += freshPoints(units, own, settings);
      priced.push({ extensometer, chamber, guard, thermocouple, fails, cautions, severity, points });
    }
    return priced.sort(cheaperFirst);
  }

  private on<T>(list: readonly SoundOption<T>[], checks: readonly BitCheck[], place: (part: T) => void): Choice<T>[] {
    const sound: Choice<T>[] = [];
    for (const option of list) {
      const { part, units } = option;
      place(part);
      const cautions = withOwn(cautionsUnlessFailing(checks, this.scratch, this.context), option);
      if (cautions !== null) sound.push({ part, units, fails: 0, cautions, severity: 0 });
    }
    return sound;
  }

  private remembered<K>(
    known: Map<K, number | null>,
    key: K,
    option: SoundOption<unknown>,
    checks: readonly BitCheck[],
  ): number | null {
    const found = known.get(key);
    if (found !== undefined) return found;
    const cautions = withOwn(cautionsUnlessFailing(checks, this.scratch, this.context), option);
    known.set(key, cautions);
    return cautions;
  }
}

function withOwn(cautions: number | null, own: SoundOption<unknown>): number | null {
  return cautions === null ? null : cautions | own.cautions;
}
