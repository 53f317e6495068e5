import { roundToSignificant, roundToStep, stateConformity } from '#libs/reduction/src/index.js';
import type { TieRule } from '#libs/reduction/src/index.js';
import { readTable } from '#test/published/reduction/read-table.js';

// ISO 80000-1:2009 Annex B (rules A and B) and ASTM E29 table 1, both from memory; the last rows are known traps of binary.
const rows = readTable('rounding.csv').filter(
  (row) => Number(row['rounding_to']) > 0 && !row['rule']!.startsWith('binary'),
);

describe('rounding', () => {
  it.each(rows)('$input to $rounding_to by $rule is $output', ({ rule, input, rounding_to, output }) => {
    const tie: TieRule = rule === 'half up' ? 'half-up' : 'half-even';
    expect(roundToStep(input!, Number(rounding_to), tie)).toBe(output);
    expect(roundToStep(Number(input), Number(rounding_to), tie)).toBe(output);
  });

  it('takes a number as it is written, not as binary holds it', () => {
    expect(roundToStep(2.675, 0.01, 'half-even')).toBe('2.68');
    expect(roundToStep(2.675, 0.01, 'half-up')).toBe('2.68');
    expect(roundToStep(1.005, 0.01, 'half-even')).toBe('1.00');
    expect(roundToStep(1.005, 0.01, 'half-up')).toBe('1.01');
  });

  // ISO 6892-1:2019 clause 22 (from memory): elongation to 0.5 %, strength to 1 MPa; ASTM E8: 5 MPa from 500 to 1000 MPa.
  it('rounds to halves and to fives', () => {
    expect(roundToStep(14.602, 0.5)).toBe('14.5');
    expect(roundToStep(14.75, 0.5)).toBe('15.0');
    expect(roundToStep(732.6, 5)).toBe('735');
    expect(roundToStep(1198.73, 10)).toBe('1200');
  });

  // ISO 527-1 (from memory): stress and modulus to three significant figures, strain to two.
  it('rounds to significant figures and shows the zeros that count', () => {
    expect(roundToSignificant(2260.4, 3)).toBe('2260');
    expect(roundToSignificant(57.05, 3, 'half-even')).toBe('57.0');
    expect(roundToSignificant(0.01999, 2)).toBe('0.020');
    expect(roundToSignificant(-99.95, 3)).toBe('-100');
    expect(roundToSignificant(0, 3)).toBe('0.00');
  });

  // ASTM E29: 59 550 psi against a least of 60 000 passes by the rounding method to 1000 psi, 59 999 fails by the absolute one.
  it('compares by the rounding method or by the absolute method, as agreed', () => {
    const specification = { lower: 60000, of: 'each', rule: 'simple' } as const;
    expect(stateConformity([59550], { ...specification, roundTo: 1000 }, null).verdict).toBe('conforms');
    expect(stateConformity([59450], { ...specification, roundTo: 1000 }, null).verdict).toBe('does-not-conform');
    expect(stateConformity([59999], specification, null).verdict).toBe('does-not-conform');
  });
});
