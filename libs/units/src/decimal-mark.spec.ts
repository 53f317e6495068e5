import { decimalMarkIn, decimalMarkNear, parseHinted } from './parse-number.js';

describe('the decimal mark of a person', () => {
  it.each([
    [['0.01', '2.001', '2.002'], '.'],
    [['0,01', '2,001'], ','],
    [['1.234,5'], ','],
    [['2.001', '2.002'], null],
    [['0.01', '0,02'], null],
    [['12', 'four', ''], null],
    [['1,234,567'], null],
  ])('in %p is %p', (texts, mark) => {
    expect(decimalMarkIn(texts)).toBe(mark);
  });

  it('is the one by which a figure comes to what is expected', () => {
    expect(decimalMarkNear('2.005', 2)).toBe('.');
    expect(decimalMarkNear('2.005', 1990)).toBe(',');
    expect(decimalMarkNear('2,005', 2)).toBe(',');
  });

  it('helps only where a figure could be read in two ways', () => {
    expect(parseHinted('2.005', { near: 2 })).toEqual({ value: 2.005 });
    expect(parseHinted('2.005', { mark: ',' })).toEqual({ value: 2005 });
    expect(parseHinted('2.005', {})).toHaveProperty('reason');
    expect(parseHinted('12,5', { mark: '.', near: 125 })).toEqual({ value: 12.5 });
    expect(parseHinted('two', { near: 2 })).toHaveProperty('reason');
  });
});
