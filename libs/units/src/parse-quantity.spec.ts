import { InvalidInput } from '#libs/errors/src/index.js';
import { parseQuantity } from './index.js';
import type { Quantity, Unit } from './index.js';

describe('parseQuantity', () => {
  it.each<[string, Quantity, number, Unit]>([
    ['12,5 kN', 'force', 12500, 'kN'],
    ['12.5kN', 'force', 12500, 'kN'],
    ['  1 250 N ', 'force', 1250, 'N'],
    ["1'250.5 N", 'force', 1250.5, 'N'],
    ['1.250,5 N', 'force', 1250.5, 'N'],
    ['1,250.5 N', 'force', 1250.5, 'N'],
    ['1,250,000 N', 'force', 1250000, 'N'],
    ['0,125 mm', 'length', 0.125, 'mm'],
    ['.5 in', 'length', 12.7, 'in'],
    ['0.5"', 'length', 12.7, 'in'],
    ['250 um', 'length', 0.25, 'µm'],
    ['250 μm', 'length', 0.25, 'µm'],
    ['2e5 MPa', 'stress', 200000, 'MPa'],
    ['2.1E+2 gpa', 'stress', 210000, 'GPa'],
    ['30 N/mm^2', 'stress', 30, 'N/mm²'],
    ['−30 °C', 'temperature', -30, '°C'],
    ['-22 F', 'temperature', -30, '°F'],
    ['5 K', 'temperatureDifference', 5, 'Δ°C'],
    ['20 N*m', 'torque', 20, 'N·m'],
    ['20 Nm', 'torque', 20, 'N·m'],
    ['6 N/25 mm', 'forcePerWidth', 0.24, 'N/25mm'],
    ['0.01 1/s', 'strainRate', 0.01, '1/s'],
    ['0.01/s', 'strainRate', 0.01, '1/s'],
    ['0.6 mm/mm/min', 'strainRate', 0.01, '1/min'],
    ['1000 ue', 'strain', 0.001, 'µε'],
  ])('reads %p as a %s of %p', (text, quantity, internalValue, unit) => {
    const parsed = parseQuantity(text, quantity);
    expect(parsed.internalValue).toBeCloseTo(internalValue, 9);
    expect(parsed.unit).toBe(unit);
  });

  it.each(['1,234 kN', '1.234 kN', '12,500 N', '999.999 N'])('refuses %p, which can be read in two ways', (text) => {
    expect(() => parseQuantity(text, 'force')).toThrow(/can mean/);
  });

  it('reads the same text once the decimal mark of the writer is known', () => {
    expect(parseQuantity('1,234 kN', 'force', { decimalMark: ',' }).internalValue).toBeCloseTo(1234, 9);
    expect(parseQuantity('1,234 kN', 'force', { decimalMark: '.' }).internalValue).toBe(1234000);
    expect(parseQuantity('1.2345 kN', 'force').internalValue).toBeCloseTo(1234.5, 9);
  });

  it('refuses a decimal mark that the writer does not use', () => {
    expect(() => parseQuantity('12,5 kN', 'force', { decimalMark: '.' })).toThrow(/misplaced/);
  });

  it.each(['1.5 5 N', '1,2,3 N', '1.234,567,8 N', '12 50 N', '1234,567.8 N'])(
    'says that the marks of %p are misplaced',
    (text) => {
      expect(() => parseQuantity(text, 'force')).toThrow(/misplaced/);
    },
  );

  it('takes a bare number only where a unit is agreed', () => {
    expect(parseQuantity('12.5', 'force', { defaultUnit: 'kN' }).internalValue).toBe(12500);
    expect(() => parseQuantity('12.5', 'force')).toThrow(/Add the unit/);
  });

  it.each([
    '',
    'kN',
    'twelve kN',
    '12 50 N',
    '1,2,3 N',
    '1..2 N',
    '--3 N',
    '5 mm',
    '5 mn',
    '1/4 kN',
    '1e999 N',
    '1e300 kip',
    `${'9'.repeat(99)} N`,
  ])('refuses %p as a force', (text) => {
    expect(() => parseQuantity(text, 'force', { field: 'peakForce' })).toThrow(InvalidInput);
  });

  it('tells milli from mega by the case alone', () => {
    expect(parseQuantity('2 mN', 'force').internalValue).toBe(0.002);
    expect(parseQuantity('2 MN', 'force').internalValue).toBe(2e6);
  });

  it('names the field, what was found and the units to choose from', () => {
    const refuse = () => parseQuantity('5 mm', 'force', { field: 'peakForce' });
    expect(refuse).toThrow('peakForce is "5 mm"; allowed is a number with one of N, kN');
    expect(refuse).toThrow('"mm" is not one of these units.');
  });
});
