import { formatNumber, formatQuantity } from './index.js';

const NO_BREAK_SPACE = '\u00a0';

describe('formatQuantity', () => {
  it('converts, rounds for reading and adds the unit', () => {
    expect(formatQuantity(12500, 'kN')).toBe(`12.5${NO_BREAK_SPACE}kN`);
    expect(formatQuantity(0.002, '%')).toBe(`0.2${NO_BREAK_SPACE}%`);
    expect(formatQuantity(100, '°F', 3)).toBe(`212${NO_BREAK_SPACE}°F`);
  });
});

describe('formatNumber', () => {
  it.each([
    [12.34567, 4, '12.35'],
    [12.34567, 1, '12'],
    [0.000123456, 3, '0.000123'],
    [9.9996, 4, '10'],
    [1234, 4, '1234'],
    [0, 4, '0'],
    [-0, 4, '0'],
    [-12.5, 4, '-12.5'],
    [1e-25, 4, '0'],
    [-1e-25, 4, '0'],
  ])('writes %p with %p digits as %p', (value, digits, text) => {
    expect(formatNumber(value, digits)).toBe(text);
  });

  it('never rounds away a digit before the decimal mark, and sets thousands apart from five digits on', () => {
    expect(formatNumber(1234567.8, 3)).toBe(['1', '234', '568'].join(NO_BREAK_SPACE));
    expect(formatNumber(12000)).toBe(`12${NO_BREAK_SPACE}000`);
  });
});
