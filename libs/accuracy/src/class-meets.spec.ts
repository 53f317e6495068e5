import { classesThatMeet, classMeets, classReserve, lowerClass } from './class-meets.js';
import type { ClassName } from './class-meets.js';

const force = (className: string): ClassName => ({ standard: 'ISO 7500-1', className });
const iso = (className: string): ClassName => ({ standard: 'ISO 9513', className });
const e83 = (className: string): ClassName => ({ standard: 'ASTM E83', className });
const e4: ClassName = { standard: 'ASTM E4', className: '1 %' };

describe('classMeets for forces', () => {
  it.each([
    [force('0.5'), force('1'), true],
    [force('1'), force('1'), true],
    [force('2'), force('1'), false],
    [force('3'), force('2'), false],
    [force('none'), force('3'), false],
    [force('1'), force('none'), false],
    // ASTM E4 limits error and repeatability to 1 % and starts at 200 resolutions; it limits neither reversibility nor zero.
    [force('1'), e4, true],
    [force('2'), e4, false],
    [e4, e4, true],
    [e4, force('1'), false],
    [e4, force('3'), false],
    [iso('0.2'), force('3'), false],
  ])('%j where %j is needed: %p', (held, needed, meets) => {
    expect(classMeets(held, needed, null)).toBe(meets);
  });
});

describe('classMeets for extensions', () => {
  const use = { gaugeLengthMm: 50, strainFrom: 0.0005, strainTo: 0.0025 };

  it('follows the order of the classes within one standard', () => {
    expect(classMeets(iso('0.5'), iso('1'), use)).toBe(true);
    expect(classMeets(iso('1'), iso('1'), null)).toBe(true);
    expect(classMeets(iso('2'), iso('1'), use)).toBe(false);
    expect(classMeets(e83('B-1'), e83('B-2'), use)).toBe(true);
    expect(classMeets(e83('C'), e83('B-2'), use)).toBe(false);
    // D and C allow the same error above a strain of 1, but a method that names class C means class C.
    expect(classMeets(e83('D'), e83('C'), { gaugeLengthMm: 25, strainFrom: 1, strainTo: 5 })).toBe(false);
  });

  // At 50 mm, ISO class 0.5 allows 0.5 % or 1.5 µm of bias; E83 B-2 allows 0.5 % or 0.0002 × 50 mm = 10 µm.
  it('compares two standards by what they allow at the gauge length', () => {
    expect(classMeets(iso('0.5'), e83('B-2'), use)).toBe(true);
    expect(classMeets(e83('B-2'), iso('0.5'), use)).toBe(false);
  });

  // E83 B-1 allows 0.25 % of error of the gauge length, ISO class 0.5 allows 0.5 %, ISO class 0.2 allows 0.2 %.
  it('does not take ISO class 0.5 for E83 B-1, which is stricter about the gauge length', () => {
    expect(classMeets(iso('0.5'), e83('B-1'), use)).toBe(false);
    expect(classMeets(iso('0.2'), e83('B-1'), use)).toBe(true);
  });

  // ISO class 0.2 allows 0.6 µm and a resolution of 0.2 µm; E83 A allows 0.00002 and 0.00001 of the gauge length.
  it('asks for the resolution as well as for the bias', () => {
    const small = { strainFrom: 0, strainTo: 0.005 };
    expect(classMeets(e83('A'), iso('0.2'), { ...small, gaugeLengthMm: 20 })).toBe(true); // 0.4 µm, 0.2 µm
    expect(classMeets(e83('A'), iso('0.2'), { ...small, gaugeLengthMm: 30 })).toBe(false); // 0.6 µm, 0.3 µm
  });

  // ISO class 1 allows 1 % or 3 µm; E83 C allows 1 % or 0.001 of the gauge length, which is less below 3 mm.
  it('depends on the gauge length where absolute limits count', () => {
    const small = { strainFrom: 0, strainTo: 0.01 };
    expect(classMeets(iso('1'), e83('C'), { ...small, gaugeLengthMm: 3 })).toBe(true);
    expect(classMeets(iso('1'), e83('C'), { ...small, gaugeLengthMm: 2.9 })).toBe(false);
  });

  it('compares two standards only where it knows the use', () => {
    expect(classMeets(iso('0.5'), e83('C'), null)).toBe(false);
  });

  it('takes an unknown class for none', () => {
    expect(classMeets(iso('B-2'), iso('2'), use)).toBe(false);
    expect(classMeets(iso('1'), iso('B-2'), use)).toBe(false);
    expect(classMeets({ standard: 'unknown', className: '1' }, iso('2'), use)).toBe(false);
  });

  it('lists every class that meets one, by standard', () => {
    expect(classesThatMeet(e83('B-2'), use)).toEqual({ 'ISO 9513': ['0.2', '0.5'], 'ASTM E83': ['A', 'B-1', 'B-2'] });
    expect(classesThatMeet(e4, null)).toEqual({ 'ISO 7500-1': ['0.5', '1'], 'ASTM E4': ['1 %'] });
  });
});

describe('the classes of a standard in their order', () => {
  it('names the next class down', () => {
    expect(lowerClass(force('1'))).toEqual(force('2'));
    expect(lowerClass(force('3'))).toBeNull();
    expect(lowerClass(e4)).toEqual(force('2'));
    expect(lowerClass(force('none'))).toBeNull();
  });

  it('counts the steps in hand', () => {
    expect(classReserve(force('0.5'), force('2'))).toBe(2);
    expect(classReserve(force('2'), force('1'))).toBe(0);
    expect(classReserve(force('0.5'), e4)).toBe(0);
  });
});
