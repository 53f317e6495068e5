import fc from 'fast-check';
import {
  QUANTITIES,
  findUnit,
  formatNumber,
  fromInternal,
  parseNumber,
  toInternal,
  unitsOf,
} from '#libs/units/src/index.js';
import type { Quantity, Unit } from '#libs/units/src/index.js';

const quantityAndUnit = fc
  .constantFrom(...QUANTITIES)
  .chain((quantity) => fc.tuple(fc.constant(quantity), fc.constantFrom<Unit>(...unitsOf(quantity))));

/** Figures of a lab, from a thread's force to a bridge bearing's, of either sign. */
const figure = fc.double({ min: 1e-9, max: 1e9, noNaN: true }).chain((size) => fc.constantFrom(size, -size));

/** Temperature is shifted by up to 459.67, so that its round trip keeps digits after that size, not of the figure. */
const SHIFT = 460;

function sizeOf(value: number, quantity: Quantity): number {
  return quantity === 'temperature' ? Math.abs(value) + SHIFT : Math.abs(value);
}

describe('the unit of entry changes nothing', () => {
  it('comes back from the internal unit within four of the last bit', () => {
    fc.assert(
      fc.property(quantityAndUnit, figure, ([quantity, unit], value) => {
        const back = fromInternal(toInternal(value, unit), unit);
        return Math.abs(back - value) <= 4 * Number.EPSILON * sizeOf(value, quantity);
      }),
      { numRuns: 2000 },
    );
  });

  it('keeps the order of two figures', () => {
    fc.assert(
      fc.property(quantityAndUnit, figure, figure, ([, unit], a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        return toInternal(low, unit) <= toInternal(high, unit);
      }),
      { numRuns: 2000 },
    );
  });

  it('reads its own names', () => {
    for (const quantity of QUANTITIES)
      for (const unit of unitsOf(quantity)) expect(findUnit(unit, quantity)).toBe(unit);
  });

  it('shows what it would read back, to the digits shown', () => {
    fc.assert(
      fc.property(figure, (value) => {
        const shown = parseNumber(formatNumber(value, 9), '.');
        return 'value' in shown && Math.abs(shown.value - value) <= 1e-8 * Math.abs(value) + 1e-20;
      }),
      { numRuns: 2000 },
    );
  });
});
