import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { findUnit, fromInternal, toInternal } from '#libs/units/src/index.js';
import type { Quantity } from '#libs/units/src/index.js';

// NIST SP 811 (2008), appendix B: https://www.nist.gov/pml/special-publication-811
// The digits are recomputed from the exact definitions of pound, inch and conventional free fall (see each row).
interface Row {
  quantity: Quantity;
  from: string;
  to: string;
  multiply_by: string;
  source: string;
}

const rows: Row[] = parse(readFileSync(new URL('./units.csv', import.meta.url)), { columns: true });

/** Doubles carry 53 bits; two conversions of two roundings each may lose four of the last bit. */
const FOUR_LAST_BITS = 4 * Number.EPSILON;

function unitNamed(name: string, quantity: Quantity) {
  const unit = findUnit(name, quantity);
  if (!unit) throw new Error(`No unit ${name} among ${quantity}`);
  return unit;
}

describe('conversion factors against NIST SP 811', () => {
  it.each(rows)('1 $from is $multiply_by $to ($quantity)', ({ quantity, from, to, multiply_by }) => {
    const converted = fromInternal(toInternal(1, unitNamed(from, quantity)), unitNamed(to, quantity));
    expect(Math.abs(converted / Number(multiply_by) - 1)).toBeLessThanOrEqual(FOUR_LAST_BITS);
  });

  it('covers the whole table', () => {
    expect(rows).toHaveLength(47);
  });

  // NIST SP 811 B.8: t/°C = (t/°F − 32)/1.8 and t/°C = T/K − 273.15, exact.
  it.each([
    [32, 0],
    [212, 100],
    [73.4, 23],
    [-40, -40],
  ])('%p °F is %p °C', (fahrenheit, celsius) => {
    expect(toInternal(fahrenheit, '°F')).toBeCloseTo(celsius, 12);
  });
});
