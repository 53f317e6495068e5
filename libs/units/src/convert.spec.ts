import { InvalidInput } from '#libs/errors/src/index.js';
import { G_MS2, QUANTITIES, fromInternal, internalUnitOf, isUnit, toInternal, unitsOf } from './index.js';
import type { Unit } from './index.js';

describe('toInternal and fromInternal', () => {
  it.each<[number, Unit, number]>([
    [12.5, 'kN', 12500],
    [1, 'lbf', 4.4482216152605], // 0.45359237 kg × 9.80665 m/s²
    [2, 'in', 50.8],
    [212, '°F', 100],
    [-40, '°F', -40],
    [0, 'K', -273.15],
    [9, 'Δ°F', 5],
    [1, 'mm/s', 60],
    [0.2, '%', 0.002],
    [500, 'µε', 0.0005],
    [90, 's', 1.5],
    [1, 'rev', 360],
    [1, 'rpm', 360], // one turn, 360°, a minute
    [3, 'N/15mm', 0.2],
  ])('%p %s is %p in the internal unit, and back', (value, unit, internal) => {
    expect(toInternal(value, unit)).toBeCloseTo(internal, 12);
    expect(fromInternal(internal, unit)).toBeCloseTo(value, 12);
  });

  it('turns a hung mass of 5 kg into 49.03 N', () => {
    expect(5 * G_MS2).toBeCloseTo(49.03325, 10);
  });

  it.each([NaN, Infinity, -Infinity])('refuses %p', (value) => {
    expect(() => toInternal(value, 'N')).toThrow(InvalidInput);
    expect(() => fromInternal(value, 'N')).toThrow(InvalidInput);
  });

  it('refuses a figure that overflows on the way', () => {
    expect(() => toInternal(1e300, 'lbf')).toThrow(InvalidInput);
  });

  it('refuses a unit that it does not know, and a name that every object has', () => {
    expect(() => toInternal(1, 'furlong' as Unit)).toThrow(InvalidInput);
    expect(() => toInternal(1, 'toString' as Unit)).toThrow(InvalidInput);
  });
});

describe('the unit table', () => {
  it('keeps N, mm, MPa, kg, °C, mm/min, N·m, minutes and strain as a fraction', () => {
    const kept = (
      ['force', 'length', 'stress', 'mass', 'temperature', 'speed', 'torque', 'time', 'strain'] as const
    ).map(internalUnitOf);
    expect(kept).toEqual(['N', 'mm', 'MPa', 'kg', '°C', 'mm/min', 'N·m', 'min', 'mm/mm']);
  });

  it.each(QUANTITIES)('%s begins with its internal unit, which changes nothing', (quantity) => {
    expect(toInternal(12.34567, internalUnitOf(quantity))).toBe(12.34567);
  });

  it('lets a unit that serves two quantities mean the same in both', () => {
    // 1 N·m = 1 J, so the torque and the energy of that name are the same number.
    expect(toInternal(1, 'N·mm')).toBe(0.001);
    expect(unitsOf('torque')).toContain('N·mm');
    expect(unitsOf('energy')).toContain('N·mm');
  });

  it('knows a unit by its exact name, and by its quantity', () => {
    expect(isUnit('kN')).toBe(true);
    expect(isUnit('kN', 'length')).toBe(false);
    expect(isUnit('KN')).toBe(false);
    expect(isUnit('constructor', 'force')).toBe(false);
    expect(isUnit(7)).toBe(false);
  });
});
