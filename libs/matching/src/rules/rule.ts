import type { RuleCode, Verdict } from '../answer.js';
import type { Technician } from '../lab.js';
import type { Needs } from '../needs.js';
import { isPair } from '../parts.js';
import type { Adapters, EndItem, Ends, Parts } from '../parts.js';
import type { MatchSettings } from '../settings.js';
import type { CalibrationNeed } from '../usable-windows.js';
import type { Adapter, Item, TimeWindow } from '../item.js';

/** What the rules judge by, besides the train. */
export interface Context {
  needs: Needs;
  settings: MatchSettings;
  /** The span of time in which the test would run. */
  period: TimeWindow;
  /** What the test asks of the calibration of a cell, and of an extensometer where it takes one. */
  cellNeed: CalibrationNeed;
  extensometerNeed: CalibrationNeed | null;
  technicians: readonly Technician[];
  /** When somebody who may run the method is on shift. */
  staffed: readonly TimeWindow[];
  /** When an item (or any unit of its pool) is usable for these needs. */
  windowsOf(item: Item): readonly TimeWindow[];
  /** When all of these are usable at once and the method is staffed. */
  commonWindows(items: readonly Item[]): readonly TimeWindow[];
}

/** What one check of a rule found; `words.ts` turns it into a sentence. */
export interface Finding {
  outcome: Verdict['outcome'];
  reason: string;
  items: readonly string[];
  required: number | string | null;
  available: number | string | null;
  /** What is left over, in `unit`; negative when short. */
  margin: number | null;
  unit: string | null;
}

/**
 * A check looks at some parts only, so that the search can drop a part without trying it in every train. It returns null where
 * the rule has nothing to say. A train obeys a rule when no check of it fails.
 */
export interface Check {
  sees: readonly (keyof Parts)[];
  judge(parts: Parts, context: Context): Finding | null;
  /**
   * A quick yes, where `judge` would find nothing worse than a pass: for the search, which asks it of thousands of choices and would
   * throw the findings away. `test/properties/matching/checks.spec.ts` holds both to each other.
   */
  passes?(parts: Parts, context: Context): boolean;
  /** What `judge` finds wherever `passes` says no; left out where only `judge` can tell. */
  otherwise?: 'caution' | 'fail';
}

export interface Rule {
  code: RuleCode;
  source: string;
  checks: readonly Check[];
}

/** Rounding of the sum, not a tolerance of the trade: a limit that is met exactly counts as met. */
const EDGE = 1e-9;

/** `available` must reach `required`. */
export function atLeast(
  reason: string,
  items: readonly string[],
  required: number,
  available: number,
  unit: string,
): Finding {
  const outcome = reaches(available, required) ? 'pass' : 'fail';
  return { outcome, reason, items, required, available, margin: available - required, unit };
}

/** The yes or no of {@link atLeast}. */
export function reaches(available: number, required: number): boolean {
  return !(available < required - EDGE * Math.abs(required));
}

/** `required` must not go below the item's lower limit `available`. */
export function notBelow(
  reason: string,
  items: readonly string[],
  required: number,
  available: number,
  unit: string,
): Finding {
  const outcome = reaches(required, available) ? 'pass' : 'fail';
  return { outcome, reason, items, required, available, margin: required - available, unit };
}

/** A yes or no, without a margin. */
export function told(
  outcome: Finding['outcome'],
  reason: string,
  items: readonly string[],
  required: number | string | null = null,
  available: number | string | null = null,
  unit: string | null = null,
): Finding {
  return { outcome, reason, items, required, available, margin: null, unit };
}

/** The same finding, but no more than a caution. */
export function atMostCaution(finding: Finding): Finding {
  return finding.outcome === 'fail' ? { ...finding, outcome: 'caution' } : finding;
}

const WEIGHT = { pass: 0, caution: 1, fail: 2 } as const;

/** The finding that counts among several: the worst, and among equal ones the one with the least to spare. */
export function worst(findings: readonly (Finding | null)[]): Finding | null {
  let found: Finding | null = null;
  for (const each of findings) if (each && (!found || isWorse(each, found))) found = each;
  return found;
}

/** The worse of two findings; the first where they are equally bad. */
export function worse(a: Finding | null, b: Finding | null): Finding | null {
  return b && (!a || isWorse(b, a)) ? b : a;
}

/** The worse of what both ends of a train are found to be; a pair is looked at once. */
export function worstEnd(ends: Ends, judge: (end: EndItem) => Finding | null): Finding | null {
  const upper = judge(ends.upper);
  return isPair(ends) ? upper : worse(upper, judge(ends.lower));
}

/** Whether both ends pass; a pair is looked at once. */
export function bothEnds(ends: Ends, context: Context, passes: (end: EndItem, context: Context) => boolean): boolean {
  return passes(ends.upper, context) && (isPair(ends) || passes(ends.lower, context));
}

/** Whether every adapter of both sides passes. */
export function allAdapters(
  { upper, lower }: Adapters,
  context: Context,
  passes: (adapter: Adapter, context: Context) => boolean,
): boolean {
  for (const adapter of upper) if (!passes(adapter, context)) return false;
  for (const adapter of lower) if (!passes(adapter, context)) return false;
  return true;
}

function isWorse(a: Finding, b: Finding): boolean {
  if (a.outcome !== b.outcome) return WEIGHT[a.outcome] > WEIGHT[b.outcome];
  return spare(a) < spare(b);
}

/** Margin as a part of what is required; infinite where there is no number. */
export function spare({ margin, required }: Pick<Finding, 'margin' | 'required'>): number {
  if (margin === null) return Infinity;
  return typeof required === 'number' && required !== 0 ? margin / Math.abs(required) : margin;
}
