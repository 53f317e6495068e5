import { fromInternal } from './convert.js';
import type { Unit } from './unit-table.js';

const NO_BREAK_SPACE = '\u00a0';

/**
 * A figure for people: converted, rounded for reading and with its unit, e.g. `12.5 kN`.
 *
 * For screens and sentences only. Results in reports are rounded by the method's own rule, not here.
 *
 * @param internalValue finite, in the internal unit of the quantity
 * @param digits significant digits, 1 to 15; digits before the decimal mark are never rounded away
 */
export function formatQuantity(internalValue: number, unit: Unit, digits = 4): string {
  return `${formatNumber(fromInternal(internalValue, unit), digits)}${NO_BREAK_SPACE}${unit}`;
}

/**
 * A number for people: `.` as decimal mark, thousands set apart by a no-break space from five digits on, no trailing
 * zeros, never an exponent.
 *
 * @param digits significant digits, 1 to 15; digits before the decimal mark are never rounded away
 */
export function formatNumber(value: number, digits = 4): string {
  const size = Math.abs(value);
  const text = isPlain(size, digits)
    ? String(Number(size.toPrecision(digits)))
    : size.toFixed(decimalsFor(value, digits));
  const [whole = '0', fraction = ''] = text.split('.');
  const tail = fraction.replace(/0+$/, '');
  const sign = value < 0 && /[1-9]/.test(whole + tail) ? '-' : '';
  return `${sign}${grouped(whole)}${tail ? `.${tail}` : ''}`;
}

/** Whether the shortest text of the rounded number is the one to show: no exponent in it, and no digit before the mark rounded away. */
function isPlain(size: number, digits: number): boolean {
  return size >= 1e-6 && size < 10 ** (digits - 1);
}

const MOST_DECIMALS = 20;

function decimalsFor(value: number, digits: number): number {
  if (Number.isInteger(value)) return 0;
  const exponent = Number(value.toExponential(digits - 1).split('e')[1]);
  return Math.min(MOST_DECIMALS, Math.max(0, digits - 1 - exponent));
}

function grouped(whole: string): string {
  return whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, NO_BREAK_SPACE);
}
