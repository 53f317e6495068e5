import { InvalidInput, fieldProblem } from '#libs/errors/src/index.js';
import { toInternal, unitsOf } from './convert.js';
import { findUnit } from './find-unit.js';
import { parseNumber } from './parse-number.js';
import type { DecimalMark } from './parse-number.js';
import type { Quantity, Unit } from './unit-table.js';

/** A figure as it was written and as it is kept. */
export interface ParsedQuantity {
  value: number;
  unit: Unit;
  /** The same figure in the internal unit of its quantity. */
  internalValue: number;
}

export interface ParseOptions {
  /** Path of the field, for the refusal; the quantity's name when left out. */
  field?: string;
  /** Unit of a bare number; without it a number needs its unit. */
  defaultUnit?: Unit;
  /** Decimal mark of the person's language, where known. */
  decimalMark?: DecimalMark;
}

/**
 * Reads a figure with its unit, e.g. `12,5 kN`, `2 800 lbf`, `0.5in`, `23 °C`.
 *
 * @throws {InvalidInput} when the number is missing or can be read in two ways, when the unit is missing, unknown or of
 * another quantity, or when the figure is too large to keep
 */
export function parseQuantity(text: string, quantity: Quantity, options: ParseOptions = {}): ParsedQuantity {
  const [numberText, unitText] = split(text);
  const number = parseNumber(numberText, options.decimalMark);
  if ('reason' in number) throw refusal(text, quantity, options, number.reason);
  const unit = unitText === '' ? options.defaultUnit : findUnit(unitText, quantity);
  if (!unit)
    throw refusal(text, quantity, options, unitText ? `"${unitText}" is not one of these units.` : 'Add the unit.');
  return { value: number.value, unit, internalValue: toInternal(number.value, unit) };
}

const LONGEST_TEXT = 64;

/** Number, then unit. A unit may begin with `1/` after a space, or with `/`: `0.01 1/s`, `0.01/s`. */
const FIGURE = /^([+\-\u2212\u2013]?[\d.,\s'\u2019]*?(?:e[+-]?\d+)?)(\s+1\s*\/.*|\s*[^\d.,\s'\u2019+-].*)?$/i;

function split(text: string): [string, string] {
  const trimmed = text.trim();
  const [, number = trimmed, unit = ''] = (trimmed.length <= LONGEST_TEXT && FIGURE.exec(trimmed)) || [];
  return [number.trim(), unit.trim()];
}

function refusal(text: string, quantity: Quantity, { field = quantity }: ParseOptions, advice: string): InvalidInput {
  const allowed = `a number with one of ${unitsOf(quantity).join(', ')}`;
  return new InvalidInput([fieldProblem({ field, found: text.trim(), allowed, unit: '' }, advice)]);
}
