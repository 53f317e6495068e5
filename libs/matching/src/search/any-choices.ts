import type { Chamber, Extensometer, Frame, Guard, JawFace, Transducer } from '../register/item.js';
import { blankParts, seatOf } from '../rules/parts.js';
import type { Ends, Parts } from '../rules/parts.js';
import { FRAME_CHECKS, tally } from './checks.js';
import type { RuleCheck, Tally } from './checks.js';
import { combinations } from './class-choices.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { onceAKey, traitsOf } from './frame-traits.js';
import type { FrameTraits } from './frame-traits.js';
import { failsFewer } from './choices.js';
import type { Option } from './choices.js';
import { NO_RULES, ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';
import type { Options } from './options.js';
import type { RequestContext } from './request-context.js';

/** Results for one frame, shared with frames that have the same traits. */
export class AnyMemo {
  readonly cells = onceAKey<readonly CellChoice[]>();
  readonly ends = onceAKey<Choice<Ends>[]>();
  readonly faces = onceAKey<Map<string, readonly Choice<JawFace | null>[]>>();
  readonly extensometers = onceAKey<Choice<Extensometer | null>[]>();
  readonly chambers = onceAKey<Choice<Chamber | null>[]>();
  readonly guards = onceAKey<Choice<Guard | null>[]>();
  readonly thermocouples = onceAKey<Choice<Transducer | null>[]>();
  readonly beside = onceAKey<BesideList>();
}

interface BesideList {
  choices: readonly BesideChoice[];
  /** The distinct sets of rules that these choices fail. */
  masks: readonly RuleSet[];
}

/** Every choice on a frame with the rules that it fails. A list is made on first use and shared by frames with the same traits. */
export class AnyChoices {
  private readonly scratch: Parts;
  private readonly traits: FrameTraits;
  private readonly endChoices: Choice<Ends>[];
  private readonly faceLists: Map<string, readonly Choice<JawFace | null>[]>;

  constructor(
    private readonly frame: Frame,
    private readonly options: Options,
    private readonly context: RequestContext,
    private readonly memo: AnyMemo,
  ) {
    this.scratch = { ...blankParts(), frame };
    this.traits = traitsOf(frame);
    this.endChoices = memo.ends(this.traits.ends, () => []);
    this.faceLists = memo.faces(this.traits.faces, () => new Map());
  }

  /** Every cell at each of its places; those that fail least come first. */
  get cells(): readonly CellChoice[] {
    return this.memo.cells(this.traits.cell, () =>
      byFails(
        this.frame.details.cellPositions.flatMap((cellAt) => {
          this.scratch.cellAt = cellAt;
          return this.options.cells.all.map((option): CellChoice => {
            this.scratch.cell = option.part;
            const { fails, cautions, severity } = this.tallied(option, FRAME_CHECKS.cell);
            return { part: option.part, units: option.units, cellAt, fails, cautions, severity };
          });
        }),
      ),
    );
  }

  /** The ends at one place of the list of all. */
  endsAt(place: number): Choice<Ends> {
    return (this.endChoices[place] ??= this.endsOf(this.options.ends.all[place]!));
  }

  private endsOf(option: Option<Ends>): Choice<Ends> {
    this.scratch.ends = option.part;
    return this.judged(option, FRAME_CHECKS.ends);
  }

  /**
   * Faces for the seat of these ends. Among faces that fail the same rules only the one with the smallest shortfall is listed. Without
   * a seat, or without faces for it, the list holds one empty choice.
   */
  facesFor(ends: Ends): readonly Choice<JawFace | null>[] {
    const seat = seatOf(ends);
    const options = seat === null ? undefined : this.options.faces.get(seat);
    if (seat === null || !options) return NO_FACES;
    const found = this.faceLists.get(seat);
    if (found) return found;
    const made: readonly Choice<JawFace | null>[] = byFails(
      leastByMask(this.on(options.all, FRAME_CHECKS.faces, (faces) => (this.scratch.faces = faces))),
    );
    this.faceLists.set(seat, made);
    return made;
  }

  /** What may stand beside the specimen. Among choices with the same chamber that fail the same rules only the best is listed. */
  get beside(): BesideList {
    return this.memo.beside(this.traits.beside, () => {
      const choices = byFails(this.leastBeside());
      return { choices, masks: [...new Set(choices.map(({ fails }) => fails))] };
    });
  }

  private leastBeside(): BesideChoice[] {
    const { options, scratch, memo, traits } = this;
    const all = combinations({
      extensometers: memo.extensometers(traits.extensometer, () =>
        leastByMask(
          this.on(options.extensometers.all, FRAME_CHECKS.extensometer, (part) => (scratch.extensometer = part)),
        ),
      ),
      chambers: memo.chambers(traits.chamber, () =>
        this.on(options.chambers.all, FRAME_CHECKS.chamber, (part) => (scratch.chamber = part)),
      ),
      guards: memo.guards(traits.guard, () =>
        this.on(options.guards.all, FRAME_CHECKS.guard, (part) => (scratch.guard = part)),
      ),
      thermocouples: memo.thermocouples(traits.thermocouple, () =>
        leastByMask(
          this.on(options.thermocouples.all, FRAME_CHECKS.thermocouple, (part) => (scratch.thermocouple = part)),
        ),
      ),
    });
    return leastByMask(all, ({ chamber }) => chamber.part);
  }

  private on<T>(list: readonly Option<T>[], checks: readonly RuleCheck[], place: (part: T) => void): Choice<T>[] {
    return list.map((option) => {
      place(option.part);
      return this.judged(option, checks);
    });
  }

  private judged<T>(option: Option<T>, checks: readonly RuleCheck[]): Choice<T> {
    const { fails, cautions, severity } = this.tallied(option, checks);
    return { part: option.part, units: option.units, fails, cautions, severity };
  }

  private tallied({ tally: own }: Option<unknown>, checks: readonly RuleCheck[]): Tally {
    const { fails, cautions, severity } = tally(checks, this.scratch, this.context);
    return {
      fails: ruleSets.union(own.fails, fails),
      cautions: ruleSets.union(own.cautions, cautions),
      severity: own.severity + severity,
    };
  }
}

const NO_FACES: readonly Choice<JawFace | null>[] = [
  { part: null, units: [], fails: NO_RULES, cautions: 0, severity: 0 },
];

function byFails<T extends Pick<Tally, 'fails' | 'severity'>>(list: readonly T[]): T[] {
  return [...list].sort(failsFewer);
}

/** Among choices of one sort that fail the same rules, the one with the smallest shortfall. */
function leastByMask<T extends Pick<Tally, 'fails' | 'severity'>>(
  list: readonly T[],
  sortOf: (each: T) => unknown = () => null,
): T[] {
  if (list.length < 2) return [...list];
  const sorts = new Map<unknown, Map<RuleSet, T>>();
  for (const each of list) {
    const sort = sortOf(each);
    const best = sorts.get(sort) ?? new Map<RuleSet, T>();
    sorts.set(sort, best);
    const held = best.get(each.fails);
    if (!held || each.severity < held.severity) best.set(each.fails, each);
  }
  return [...sorts.values()].flatMap((best) => [...best.values()]);
}
