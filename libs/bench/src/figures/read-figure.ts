import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { findUnit, isUnit, QUANTITIES, toInternal, unitsOf } from '#libs/units/src/index.js';
import type { Quantity } from '#libs/units/src/index.js';
import type { TypedFigure } from './typed-figure.js';

/** How a result is shown: its unit, and how many shown units one kept unit is (100 for a strain in percent). */
export interface ShownAs {
  unit: string;
  factor: number;
}

/** N/mm is a force per width but for this key; every other shown unit belongs to the first quantity that knows it. */
const QUANTITY_OF_KEY: Readonly<Record<string, Quantity>> = { stiffness: 'stiffness' };
const KEPT_STRAIN = 'mm/mm';

/**
 * A figure as somebody typed it, in the unit in which it is kept.
 *
 * @param field path of the figure, as the sender wrote it
 * @returns the figure, or what is wrong with its unit
 */
export function readFigure(
  { key, value, unit }: { key: string; value: number; unit: string },
  shown: ShownAs,
  field: string,
): TypedFigure | FieldProblem {
  const kept = shown.factor === 1 ? shown.unit : KEPT_STRAIN;
  if (unit === shown.unit) {
    return { key, value: value / shown.factor, unit: kept, typed: { unit, factor: 1 / shown.factor } };
  }
  const quantity = QUANTITY_OF_KEY[key] ?? QUANTITIES.find((each) => isUnit(shown.unit, each));
  const found = quantity && findUnit(unit, quantity);
  if (found) {
    return { key, value: toInternal(value, found), unit: kept, typed: { unit: found, factor: toInternal(1, found) } };
  }
  const allowed = quantity ? `one of ${unitsOf(quantity).join(', ')}` : shown.unit || 'no unit';
  return fieldProblem({ field: `${field}.unit`, found: unit, allowed, unit: '' });
}
