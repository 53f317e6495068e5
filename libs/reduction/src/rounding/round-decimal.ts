import { Decimal } from 'decimal.js';

/** How a tie is settled: to the even digit (ISO 80000-1 rule A, ASTM E29), or away from zero (rule B). */
export type TieRule = 'half-even' | 'half-up';

const MODES = { 'half-even': Decimal.ROUND_HALF_EVEN, 'half-up': Decimal.ROUND_HALF_UP } as const;

/** A number kept to 40 digits, apart from any setting that others may make. */
const Exact = Decimal.clone({ precision: 40, toExpNeg: -40, toExpPos: 40 });

/**
 * Rounds once, in decimal: the number is taken as it is written (2.675, not the 2.67499… that a double holds).
 *
 * @param value finite number, or its decimal text
 * @param step positive, e.g. 0.1, 0.5, 5, 10
 * @returns text with as many decimals as the step has, e.g. `12.20` for step 0.01
 * @throws {RangeError} for a value that is not finite or a step that is not positive
 */
export function roundToStep(value: number | string, step: number, rule: TieRule = 'half-even'): string {
  const exact = exactly(value);
  if (!(step > 0)) throw new RangeError(`A step of ${step} cannot be rounded to.`);
  const exactStep = new Exact(step);
  return shown(exact.div(exactStep).toDecimalPlaces(0, MODES[rule]).mul(exactStep), exactStep.decimalPlaces());
}

/**
 * Rounds to significant digits; zeros that carry meaning are shown (`2.50`).
 *
 * @param digits whole, 1 to 15
 * @throws {RangeError} otherwise
 */
export function roundToSignificant(value: number | string, digits: number, rule: TieRule = 'half-even'): string {
  const exact = exactly(value);
  if (!(Number.isInteger(digits) && digits >= 1 && digits <= 15))
    throw new RangeError(`${digits} significant digits cannot be shown.`);
  if (exact.isZero()) return shown(exact, digits - 1);
  const rounded = exact.toSignificantDigits(digits, MODES[rule]);
  return shown(rounded, Math.max(0, digits - 1 - rounded.e));
}

function exactly(value: number | string): Decimal {
  const exact = new Exact(value);
  if (!exact.isFinite()) throw new RangeError(`${value} cannot be rounded.`);
  return exact;
}

/** A rounded zero has no sign. */
function shown(value: Decimal, decimals: number): string {
  return (value.isZero() ? value.abs() : value).toFixed(decimals);
}

/** A doubt may lose at most this share by rounding (EA-4/02, from memory). */
const MOST_LOST = 0.05;

/**
 * A value with its expanded uncertainty as both are printed: U to two significant digits, rounded up where rounding to
 * the nearest would take more than 5 % from it (EA-4/02, from memory; JCGM 100:2008, 7.2.6), and the value to the same place.
 *
 * @param expanded not negative; with 0 the value is shown as it is
 */
export function roundWithUncertainty(
  value: number,
  expanded: number,
  rule: TieRule = 'half-even',
): { value: string; expanded: string } {
  if (!(expanded > 0)) return { value: shown(exactly(value), exactly(value).decimalPlaces()), expanded: '0' };
  const exact = exactly(expanded);
  const nearest = exact.toSignificantDigits(2, MODES[rule]);
  const rounded = nearest.lt(exact.mul(1 - MOST_LOST)) ? exact.toSignificantDigits(2, Decimal.ROUND_UP) : nearest;
  const step = new Exact(10).pow(rounded.e - 1);
  return { value: roundToStep(value, step.toNumber(), rule), expanded: shown(rounded, Math.max(0, 1 - rounded.e)) };
}
