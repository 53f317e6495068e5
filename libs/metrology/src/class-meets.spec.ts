import { extensionClassMeets, forceClassMeets } from './class-meets.js';
import type { ExtensionClassName } from './class-meets.js';

describe('forceClassMeets', () => {
  it.each([
    ['0.5', '1', true],
    ['1', '1', true],
    ['2', '1', false],
    ['3', '2', false],
    ['none', '3', false],
    ['1', 'none', false],
  ])('class %p where %p is needed: %p', (found, needed, meets) => {
    expect(forceClassMeets(found, needed)).toBe(meets);
  });
});

describe('extensionClassMeets', () => {
  const use = { gaugeLengthMm: 50, strainFrom: 0.0005, strainTo: 0.0025 };
  const iso = (className: string): ExtensionClassName => ({ standard: 'ISO 9513', className });
  const e83 = (className: string): ExtensionClassName => ({ standard: 'ASTM E83', className });

  it('follows the order of the classes within one standard', () => {
    expect(extensionClassMeets(iso('0.5'), iso('1'), use)).toBe(true);
    expect(extensionClassMeets(iso('1'), iso('1'), use)).toBe(true);
    expect(extensionClassMeets(iso('2'), iso('1'), use)).toBe(false);
    expect(extensionClassMeets(e83('B-1'), e83('B-2'), use)).toBe(true);
    expect(extensionClassMeets(e83('C'), e83('B-2'), use)).toBe(false);
  });

  // At 50 mm, ISO class 0.5 allows 0.5 % or 1.5 µm of bias; E83 B-2 allows 0.5 % or 0.0002 × 50 mm = 10 µm.
  it('compares the two standards by what they allow at the gauge length', () => {
    expect(extensionClassMeets(iso('0.5'), e83('B-2'), use)).toBe(true);
    expect(extensionClassMeets(e83('B-2'), iso('0.5'), use)).toBe(false);
  });

  // ISO class 0.2 allows 0.6 µm and a resolution of 0.2 µm; E83 A allows 0.00002 and 0.00001 of the gauge length.
  it('asks for the resolution as well as for the bias', () => {
    const small = { strainFrom: 0, strainTo: 0.005 };
    expect(extensionClassMeets(e83('A'), iso('0.2'), { ...small, gaugeLengthMm: 20 })).toBe(true); // 0.4 µm, 0.2 µm
    expect(extensionClassMeets(e83('A'), iso('0.2'), { ...small, gaugeLengthMm: 30 })).toBe(false); // 0.6 µm, 0.3 µm
  });

  // ISO 0.5 allows 0.2 % more gauge length than E83 A, and 0.5 % instead of 0.1 % of bias.
  it('does not take a class for a better one', () => {
    expect(extensionClassMeets(iso('0.5'), e83('A'), use)).toBe(false);
  });

  // Class D allows 0.01 strain up to 1 strain and class C 1 % from 0.1 strain on, so that they meet at 1 strain (100 %).
  it('looks at the strains that are read, not at the names', () => {
    const large = { gaugeLengthMm: 25, strainFrom: 1, strainTo: 5 };
    expect(extensionClassMeets(e83('D'), e83('C'), large)).toBe(true);
    expect(extensionClassMeets(e83('D'), e83('C'), { ...large, strainFrom: 0.9 })).toBe(false);
  });

  it('takes an unknown class for none', () => {
    expect(extensionClassMeets(iso('B-2'), iso('2'), use)).toBe(false);
    expect(extensionClassMeets(iso('1'), iso('B-2'), use)).toBe(false);
  });
});
