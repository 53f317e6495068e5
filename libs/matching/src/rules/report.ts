import type { Item } from '../register/item.js';
import { FAIL, PASS, reaches } from './outcome.js';
import type { Outcome } from './outcome.js';

/** A figure, or words for people. A function is called only when somebody reads the words. */
export type Fact = number | string | null | (() => string);

type Named = Pick<Item, 'id'>;

/** How a check reports what it found. Every call returns its outcome, so that a check can return the worst of several calls. */
export interface Report {
  /** `available` must reach `required`, or the outcome is `otherwise`. */
  atLeast(
    reason: string,
    required: number,
    available: number,
    unit: string,
    items: readonly Named[] | Named,
    otherwise?: Outcome,
  ): Outcome;
  /** `required` must not go below `lowest`, or the outcome is `otherwise`. */
  notBelow(
    reason: string,
    required: number,
    lowest: number,
    unit: string,
    items: readonly Named[] | Named,
    otherwise?: Outcome,
  ): Outcome;
  /** A limit that is broken for sure. */
  short(
    outcome: Outcome,
    reason: string,
    required: number,
    available: number,
    unit: string,
    items: readonly Named[] | Named,
  ): Outcome;
  /** A yes or no, without a margin. */
  say(
    outcome: Outcome,
    reason: string,
    items: readonly Named[] | Named,
    required?: Fact,
    available?: Fact,
    unit?: string | null,
  ): Outcome;
}

/** What counts of all that a rule found about a train. */
export interface Finding {
  /** Which of the rule's reasons counts, e.g. `frame-too-small`; empty when there was nothing to check. */
  reason: string;
  outcome: 'pass' | 'caution' | 'fail';
  /** Ids of the items concerned. */
  items: readonly string[];
  required: number | string | null;
  available: number | string | null;
  /** What is left over, in `unit`; negative when short; null when the rule has no number. */
  margin: number | null;
  unit: string | null;
}

/** For the search, which runs thousands of checks: it records no words, only the shortfall of the worst failure. */
export class QuickReport implements Report {
  /** Least relative margin of the failures; infinite where none has a number. */
  private least = Infinity;

  start(): void {
    this.least = Infinity;
  }

  /** How badly the check failed, as the relative shortfall, from 0 to 1; 1 where there is no number. */
  get severity(): number {
    return Number.isFinite(this.least) ? Math.min(1, -Math.min(0, this.least)) : 1;
  }

  atLeast(
    _reason: string,
    required: number,
    available: number,
    _unit: string,
    _items: unknown,
    otherwise: Outcome = FAIL,
  ): Outcome {
    return reaches(available, required) ? PASS : this.fails(otherwise, required, available - required);
  }

  notBelow(
    _reason: string,
    required: number,
    lowest: number,
    _unit: string,
    _items: unknown,
    otherwise: Outcome = FAIL,
  ): Outcome {
    return reaches(required, lowest) ? PASS : this.fails(otherwise, required, required - lowest);
  }

  short(outcome: Outcome, _reason: string, required: number, available: number): Outcome {
    return this.fails(outcome, required, available - required);
  }

  say(outcome: Outcome): Outcome {
    return outcome;
  }

  private fails(outcome: Outcome, required: number, margin: number): Outcome {
    if (outcome === FAIL) this.least = Math.min(this.least, spareOf(margin, required));
    return outcome;
  }
}

const WORDS = ['pass', 'caution', 'fail'] as const;

/** For people: it records the worst finding, and among equally bad ones the one with the smallest margin. */
export class FullReport implements Report {
  private outcome: Outcome = PASS;
  private spare = Infinity;
  found: Finding | null = null;

  atLeast(
    reason: string,
    required: number,
    available: number,
    unit: string,
    items: readonly Named[] | Named,
    otherwise: Outcome = FAIL,
  ): Outcome {
    const outcome = reaches(available, required) ? PASS : otherwise;
    return this.keep(outcome, reason, items, required, available, unit, available - required);
  }

  notBelow(
    reason: string,
    required: number,
    lowest: number,
    unit: string,
    items: readonly Named[] | Named,
    otherwise: Outcome = FAIL,
  ): Outcome {
    const outcome = reaches(required, lowest) ? PASS : otherwise;
    return this.keep(outcome, reason, items, required, lowest, unit, required - lowest);
  }

  short(
    outcome: Outcome,
    reason: string,
    required: number,
    available: number,
    unit: string,
    items: readonly Named[] | Named,
  ): Outcome {
    return this.keep(outcome, reason, items, required, available, unit, available - required);
  }

  say(
    outcome: Outcome,
    reason: string,
    items: readonly Named[] | Named,
    required: Fact = null,
    available: Fact = null,
    unit: string | null = null,
  ): Outcome {
    return this.keep(outcome, reason, items, required, available, unit, null);
  }

  private keep(
    outcome: Outcome,
    reason: string,
    items: readonly Named[] | Named,
    required: Fact,
    available: Fact,
    unit: string | null,
    margin: number | null,
  ): Outcome {
    const spare = margin === null ? Infinity : spareOf(margin, Number(required));
    const isWorse = outcome > this.outcome || (outcome === this.outcome && spare < this.spare);
    if (this.found && !isWorse) return outcome;
    this.outcome = outcome;
    this.spare = spare;
    this.found = {
      outcome: WORDS[outcome],
      reason,
      items: 'id' in items ? [items.id] : items.map(({ id }) => id),
      required: told(required),
      available: told(available),
      margin,
      unit,
    };
    return outcome;
  }
}

function told(fact: Fact): number | string | null {
  return typeof fact === 'function' ? fact() : fact;
}

/** Margin as a part of what is required. */
function spareOf(margin: number, required: number): number {
  return required === 0 ? margin : margin / Math.abs(required);
}
