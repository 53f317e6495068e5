import { meets } from '../register/couplings.js';
import type {
  CellPosition,
  Chamber,
  Extensometer,
  Frame,
  Guard,
  JawFace,
  LoadCell,
  Transducer,
} from '../register/item.js';
import { blankParts } from '../rules/parts.js';
import type { Ends, Parts } from '../rules/parts.js';
import { cautionsUnlessFailing, FRAME_CHECKS } from './checks.js';
import type { RuleCheck } from './checks.js';
import { combinations } from './class-choices.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { onceAKey, traitsOf } from './frame-traits.js';
import type { FrameTraits } from './frame-traits.js';
import { cheaperFirst, freshPoints } from './fresh.js';
import type { SoundOption } from './choices.js';
import type { Options } from './options.js';
import type { RequestContext } from './request-context.js';
import { NO_RULES, ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';

type PricedBeside = BesideChoice & { points: number };

/** Results for one frame, shared with frames that have the same traits. */
export class SoundMemo {
  readonly cells = onceAKey<readonly CellChoice[]>();
  readonly cellCautions = onceAKey<Map<SoundOption<LoadCell>, Map<CellPosition, RuleSet | null>>>();
  readonly ends = onceAKey<Map<SoundOption<Ends>, RuleSet | null>>();
  readonly faces = onceAKey<Map<SoundOption<JawFace | null>, RuleSet | null>>();
  readonly extensometers = onceAKey<Choice<Extensometer | null>[]>();
  readonly chambers = onceAKey<Choice<Chamber | null>[]>();
  readonly guards = onceAKey<Choice<Guard | null>[]>();
  readonly thermocouples = onceAKey<Choice<Transducer | null>[]>();
  readonly beside = onceAKey<readonly PricedBeside[]>();
}

/** The choices that fail no rule on a frame. A choice is judged on first use, once for all frames with the same traits. */
export class SoundChoices {
  private readonly scratch: Parts;
  private readonly traits: FrameTraits;
  private readonly cellCautions: Map<SoundOption<LoadCell>, Map<CellPosition, RuleSet | null>>;
  private readonly endCautions: Map<SoundOption<Ends>, RuleSet | null>;
  private readonly faceCautions: Map<SoundOption<JawFace | null>, RuleSet | null>;

  constructor(
    private readonly frame: Frame,
    private readonly options: Options,
    private readonly context: RequestContext,
    private readonly memo: SoundMemo,
  ) {
    this.scratch = { ...blankParts(), frame };
    this.traits = traitsOf(frame);
    this.cellCautions = memo.cellCautions(this.traits.cell, () => new Map());
    this.endCautions = memo.ends(this.traits.ends, () => new Map());
    this.faceCautions = memo.faces(this.traits.faces, () => new Map());
  }

  /** The sound cells that meet the frame, in the order of the options. */
  get cells(): readonly CellChoice[] {
    return this.memo.cells(this.traits.cell, () => this.soundCells());
  }

  private soundCells(): CellChoice[] {
    const { cellPositions, crossheadCoupling, baseCoupling } = this.frame.details;
    return cellPositions.flatMap((cellAt) => {
      const seat = cellAt === 'crosshead' ? crossheadCoupling : baseCoupling;
      return this.options.cells.sound.flatMap((option): CellChoice[] => {
        const { part, units } = option;
        if (!meets(seat, part.details.frameCoupling)) return [];
        const cautions = this.cautionsOfCell(option, cellAt);
        return cautions === null ? [] : [{ part, units, cellAt, fails: NO_RULES, cautions, severity: 0 }];
      });
    });
  }

  /** Rules for which a sound cell gets a caution on this frame; null when it fails here. */
  cautionsOfCell(option: SoundOption<LoadCell>, cellAt: CellPosition): RuleSet | null {
    const places = this.cellCautions.get(option) ?? new Map<CellPosition, RuleSet | null>();
    this.cellCautions.set(option, places);
    this.scratch.cell = option.part;
    this.scratch.cellAt = cellAt;
    return this.remembered(places, cellAt, option, FRAME_CHECKS.cell);
  }

  /** The same for ends. */
  cautionsOfEnds(option: SoundOption<Ends>): RuleSet | null {
    this.scratch.ends = option.part;
    return this.remembered(this.endCautions, option, option, FRAME_CHECKS.ends);
  }

  /** The same for faces. */
  cautionsOfFaces(option: SoundOption<JawFace | null>): RuleSet | null {
    this.scratch.faces = option.part;
    return this.remembered(this.faceCautions, option, option, FRAME_CHECKS.faces);
  }

  /** What may stand beside the specimen, with its points where none of it hangs yet, cheapest first. */
  get beside(): readonly PricedBeside[] {
    return this.memo.beside(this.traits.beside, () => this.pricedBeside());
  }

  private pricedBeside(): PricedBeside[] {
    const { options, scratch, memo, traits } = this;
    const lists = {
      extensometers: memo.extensometers(traits.extensometer, () =>
        this.on(options.extensometers.sound, FRAME_CHECKS.extensometer, (part) => (scratch.extensometer = part)),
      ),
      chambers: memo.chambers(traits.chamber, () =>
        this.on(options.chambers.sound, FRAME_CHECKS.chamber, (part) => (scratch.chamber = part)),
      ),
      guards: memo.guards(traits.guard, () =>
        this.on(options.guards.sound, FRAME_CHECKS.guard, (part) => (scratch.guard = part)),
      ),
      thermocouples: memo.thermocouples(traits.thermocouple, () =>
        this.on(options.thermocouples.sound, FRAME_CHECKS.thermocouple, (part) => (scratch.thermocouple = part)),
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

  private on<T>(list: readonly SoundOption<T>[], checks: readonly RuleCheck[], place: (part: T) => void): Choice<T>[] {
    const sound: Choice<T>[] = [];
    for (const option of list) {
      const { part, units } = option;
      place(part);
      const cautions = withOwn(cautionsUnlessFailing(checks, this.scratch, this.context), option);
      if (cautions !== null) sound.push({ part, units, fails: NO_RULES, cautions, severity: 0 });
    }
    return sound;
  }

  private remembered<K>(
    known: Map<K, RuleSet | null>,
    key: K,
    option: SoundOption<unknown>,
    checks: readonly RuleCheck[],
  ): RuleSet | null {
    const found = known.get(key);
    if (found !== undefined) return found;
    const cautions = withOwn(cautionsUnlessFailing(checks, this.scratch, this.context), option);
    known.set(key, cautions);
    return cautions;
  }
}

function withOwn(cautions: RuleSet | null, own: SoundOption<unknown>): RuleSet | null {
  return cautions === null ? null : ruleSets.union(cautions, own.cautions);
}
