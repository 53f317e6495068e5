import { unitsOf } from './convert.js';
import { UNIT_TABLE } from './unit-table.js';
import type { Quantity, Unit, UnitDefinition } from './unit-table.js';

/**
 * The unit of a quantity that a text means, by its name or one of its spellings (`Nm`, `N*m`, `in-lbf`, `um`, `N/mm^2`).
 *
 * Upper and lower case count where they tell units apart (mN, MN); elsewhere they do not (`mpa`).
 *
 * @returns the unit, or null when the text means none or more than one
 */
export function findUnit(text: string, quantity: Quantity): Unit | null {
  const wanted = canonical(text);
  const exact = unitsSpelled(quantity, (spelling) => spelling === wanted);
  if (exact.length > 0) return onlyOne(exact);
  return onlyOne(unitsSpelled(quantity, (spelling) => spelling.toLowerCase() === wanted.toLowerCase()));
}

function unitsSpelled(quantity: Quantity, fits: (spelling: string) => boolean): Unit[] {
  const definitions: Record<string, UnitDefinition> = UNIT_TABLE[quantity];
  return unitsOf(quantity).filter((unit) =>
    [unit, ...(definitions[unit]?.spellings ?? [])].some((spelling) => fits(canonical(spelling))),
  );
}

function onlyOne(units: Unit[]): Unit | null {
  return units.length === 1 ? units[0]! : null;
}

/** One form for the many ways to type a product, a power, a root or a micro sign. */
function canonical(text: string): string {
  return text
    .replace(/\u03bc/g, 'µ')
    .replace(/^u(?=m|ε|e)/, 'µ')
    .replace(/\/u(?=m)/, '/µ')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/sqrt|\^0\.5/g, '√')
    .replace(/[\s.*⋅·^-]/g, '');
}
