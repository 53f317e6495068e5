import { InvalidInput, fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import { UNIT_TABLE } from './unit-table.js';
import type { Quantity, Unit, UnitDefinition, UnitOf } from './unit-table.js';

/** Every quantity, in the order of the table. */
export const QUANTITIES = Object.keys(UNIT_TABLE) as readonly Quantity[];

/** A unit that serves two quantities (N·m, N/mm, %) has the same factor in both, so one lookup by name is enough. */
const DEFINITIONS = new Map<string, UnitDefinition>(
  QUANTITIES.flatMap((quantity) => Object.entries(UNIT_TABLE[quantity])),
);

/** The units of a quantity as people may choose them, the internal one first. */
export function unitsOf<Q extends Quantity>(quantity: Q): readonly UnitOf<Q>[] {
  return Object.keys(UNIT_TABLE[quantity]) as UnitOf<Q>[];
}

/** The unit in which figures of a quantity are kept and computed, e.g. N, mm, MPa, °C, mm/min, kg, min, strain as mm/mm. */
export function internalUnitOf(quantity: Quantity): Unit {
  return unitsOf(quantity)[0]!;
}

/** Whether a text is the name of a unit (its exact name, no other spelling), of one quantity if that is given. */
export function isUnit<Q extends Quantity = Quantity>(text: unknown, quantity?: Q): text is UnitOf<Q> {
  if (typeof text !== 'string') return false;
  return quantity ? Object.hasOwn(UNIT_TABLE[quantity], text) : DEFINITIONS.has(text);
}

/**
 * From the unit that somebody wrote to the internal one.
 *
 * @param value finite, in `unit`
 * @returns the same figure in the internal unit of the quantity, at most two roundings away from exact
 * @throws {InvalidInput} when the value is not finite (before or after), or the unit is unknown
 */
export function toInternal(value: number, unit: Unit): number {
  const { up, down, shift = 0 } = definitionOf(unit);
  return finite(((finite(value, unit) + shift) * up) / down, unit);
}

/**
 * From the internal unit to one for people; the inverse of {@link toInternal}.
 *
 * @param internalValue finite, in the internal unit of the quantity
 * @throws {InvalidInput} as {@link toInternal}
 */
export function fromInternal(internalValue: number, unit: Unit): number {
  const { up, down, shift = 0 } = definitionOf(unit);
  return finite((finite(internalValue, unit) * down) / up - shift, unit);
}

function definitionOf(unit: Unit): UnitDefinition {
  const definition = DEFINITIONS.get(unit);
  if (definition) return definition;
  throw new InvalidInput([fieldProblem({ field: 'unit', found: unit, allowed: 'a known unit', unit: '' })]);
}

function finite(value: number, unit: Unit): number {
  const problem = numberProblem('value', value, { unit });
  if (problem) throw new InvalidInput([problem]);
  return value;
}
