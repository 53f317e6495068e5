import type { Item } from '../register/item.js';
import { blankParts } from '../rules/parts.js';
import type { Parts } from '../rules/parts.js';
import { cautionsUnlessFailing, tally } from './checks.js';
import type { RuleCheck, Tally } from './checks.js';
import type { Chosen } from './lab-index.js';
import type { RequestContext } from './request-context.js';
import { NO_RULES, ruleSets } from './rule-set.js';
import type { RuleSet } from './rule-set.js';

/** A choice for one part of the train that fails no rule by itself: a pool, or a set of pools for the ends. */
export interface SoundOption<T> extends Chosen<T> {
  /** Rules that its own checks caution. */
  cautions: RuleSet;
}

/** Any choice for a part of the train, with what its own checks say. */
export interface Option<T> extends Chosen<T> {
  tally: Tally;
}

/** Units by the item that stands for them. */
export type Units = readonly (readonly Item[])[];

/**
 * The choices for one part, judged by the checks that look at that part alone; the frame comes later. Most requests need only the
 * sound choices, so what is wrong with the others is worked out on demand.
 */
export class Choices<T> {
  private readonly scratch = blankParts();
  private failing: Chosen<T>[] = [];
  private soundOnes: readonly SoundOption<T>[] | null = null;
  private every: readonly Option<T>[] | null = null;

  constructor(
    private readonly chosen: readonly Chosen<T>[],
    private readonly place: (parts: Parts, part: T) => void,
    private readonly checks: readonly RuleCheck[],
    private readonly context: RequestContext,
  ) {}

  get isEmpty(): boolean {
    return this.chosen.length === 0;
  }

  /** Those that fail nothing, in the order of the index. */
  get sound(): readonly SoundOption<T>[] {
    return (this.soundOnes ??= this.findSound());
  }

  /** All of them, those that fail fewest rules first, and of these the ones that are least short. */
  get all(): readonly Option<T>[] {
    return (this.every ??= [
      ...this.sound.map(({ part, units, cautions }): Option<T> => ({
        part,
        units,
        tally: { fails: NO_RULES, cautions, severity: 0 },
      })),
      ...this.failing
        .map(({ part, units }): Option<T> => {
          this.place(this.scratch, part);
          return { part, units, tally: tally(this.checks, this.scratch, this.context) };
        })
        .sort((a, b) => failsFewer(a.tally, b.tally)),
    ]);
  }

  private findSound(): SoundOption<T>[] {
    const sound: SoundOption<T>[] = [];
    for (const each of this.chosen) {
      this.place(this.scratch, each.part);
      const cautions = cautionsUnlessFailing(this.checks, this.scratch, this.context);
      if (cautions === null) this.failing.push(each);
      else sound.push({ part: each.part, units: each.units, cautions });
    }
    return sound;
  }
}

/** Orders what fails fewer rules first, and of equal ones what is less short. */
export function failsFewer(a: Pick<Tally, 'fails' | 'severity'>, b: Pick<Tally, 'fails' | 'severity'>): number {
  return ruleSets.count(a.fails) - ruleSets.count(b.fails) || a.severity - b.severity;
}
