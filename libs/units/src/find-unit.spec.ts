import { QUANTITIES } from './convert.js';
import { findUnit } from './find-unit.js';
import { UNIT_TABLE } from './unit-table.js';
import type { Quantity, UnitDefinition } from './unit-table.js';

const spelled = QUANTITIES.flatMap((quantity) =>
  Object.entries(UNIT_TABLE[quantity] as Record<string, UnitDefinition>).flatMap(([unit, { spellings = [] }]) =>
    [unit, ...spellings].map((text): [string, Quantity, string] => [text, quantity, unit]),
  ),
);

describe('findUnit', () => {
  it.each(spelled)('takes %p as a %s for %p', (text, quantity, unit) => {
    expect(findUnit(text, quantity)).toBe(unit);
  });

  it('does not choose between units that differ by the case alone', () => {
    expect(findUnit('mn', 'force')).toBeNull();
    expect(findUnit('KN', 'force')).toBe('kN');
  });

  it('does not look into other quantities', () => {
    expect(findUnit('mm', 'force')).toBeNull();
    expect(findUnit('K', 'temperature')).toBe('K');
    expect(findUnit('K', 'temperatureDifference')).toBe('Δ°C');
  });
});
