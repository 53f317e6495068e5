import { Decimal } from 'decimal.js';
import { numberProblem, refuseIfAny } from '#libs/errors/src/index.js';
import { roundToStep } from '../rounding/round-decimal.js';
import type { TieRule } from '../rounding/round-decimal.js';
import { meanOf } from '../statistics/describe-sample.js';
import { normalCdf } from '../statistics/normal.js';

/** Limits of a result and how they are held, as agreed before the test. All in the unit of the result. */
export interface Specification {
  readonly lower?: number;
  readonly upper?: number;
  /** Whether every specimen must meet the limits, or their mean. */
  readonly of: 'each' | 'mean';
  /** `simple` acceptance holds the result itself against the limit; `guarded` asks that it clears the limit by U (ILAC-G8:09/2019). */
  readonly rule: 'simple' | 'guarded';
  /** Round to this step first (ASTM E29, rounding method); left out, the result is compared as found (absolute method). */
  readonly roundTo?: number;
  readonly tieRule?: TieRule;
}

/** `undecided`: within the limit, but nearer to it than U, under the guarded rule. */
export type Verdict = 'conforms' | 'does-not-conform' | 'undecided';

/** One value held against the limits. */
export interface ValueVerdict {
  /** As compared, after any rounding. */
  readonly value: number;
  readonly verdict: Verdict;
  /** Chance that the true value lies within the limits, if the doubt is normal (JCGM 106:2012, 7); null without U. */
  readonly chanceWithin: number | null;
}

export interface ConformityStatement {
  readonly verdict: Verdict;
  readonly values: readonly ValueVerdict[];
}

/**
 * States conformity. The whole fails when one value fails, and is undecided when none fails and one is undecided.
 *
 * @param values results of the specimens, at least one, in the unit of the limits
 * @param expandedUncertainty U of one value (or of the mean, for `mean`) with k = 2; null where none is stated
 * @throws {InvalidInput} without a limit, with limits that cross, without values, or guarded without U
 */
export function stateConformity(
  values: readonly number[],
  specification: Specification,
  expandedUncertainty: number | null,
): ConformityStatement {
  check(values, specification, expandedUncertainty);
  const compared = specification.of === 'mean' ? [meanOf(values)] : values;
  const verdicts = compared.map((value) => judge(value, specification, expandedUncertainty));
  return { verdict: worst(verdicts), values: verdicts };
}

function check(
  values: readonly number[],
  { lower, upper, rule, roundTo }: Specification,
  expanded: number | null,
): void {
  refuseIfAny([
    numberProblem('values', values.length, { min: 1, unit: '' }),
    ...values.map((value, at) => numberProblem(`values[${at}]`, value, { unit: '' })),
    lower === undefined && upper === undefined ? numberProblem('lower', undefined, { unit: '' }) : null,
    lower === undefined
      ? null
      : numberProblem('lower', lower, { unit: '', ...(upper === undefined ? {} : { max: upper }) }),
    upper === undefined ? null : numberProblem('upper', upper, { unit: '' }),
    expanded === null && rule === 'simple'
      ? null
      : numberProblem('expandedUncertainty', expanded, { min: 0, unit: '' }),
    roundTo === undefined ? null : numberProblem('roundTo', roundTo, { above: 0, unit: '' }),
  ]);
}

function judge(raw: number, specification: Specification, expanded: number | null): ValueVerdict {
  const { lower = -Infinity, upper = Infinity, rule, roundTo, tieRule } = specification;
  const value = roundTo === undefined ? raw : Number(roundToStep(raw, roundTo, tieRule));
  const guard = rule === 'guarded' ? expanded! : 0;
  const isWithin = value >= lower && value <= upper;
  const isClear = isAtLeast(value, lower, guard) && isAtLeast(-value, -upper, guard);
  return {
    value,
    verdict: isClear ? 'conforms' : isWithin ? 'undecided' : 'does-not-conform',
    chanceWithin: chanceWithin(raw, lower, upper, expanded),
  };
}

/** value ≥ limit + guard on exact decimals: in binary 0.1 + 0.2 is more than 0.3. */
function isAtLeast(value: number, limit: number, guard: number): boolean {
  return !Number.isFinite(limit) || new Decimal(value).gte(new Decimal(limit).plus(guard));
}

const USUAL_K = 2;

function chanceWithin(value: number, lower: number, upper: number, expanded: number | null): number | null {
  if (expanded === null) return null;
  if (expanded === 0) return value >= lower && value <= upper ? 1 : 0;
  const standard = expanded / USUAL_K;
  return normalCdf((upper - value) / standard) - normalCdf((lower - value) / standard);
}

function worst(verdicts: readonly ValueVerdict[]): Verdict {
  const has = (verdict: Verdict) => verdicts.some((each) => each.verdict === verdict);
  return has('does-not-conform') ? 'does-not-conform' : has('undecided') ? 'undecided' : 'conforms';
}
