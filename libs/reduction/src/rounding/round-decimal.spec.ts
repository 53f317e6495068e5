import { reported } from './reported.js';
import { roundToSignificant, roundToStep, roundWithUncertainty } from './round-decimal.js';

describe('rounding', () => {
  it('keeps the sign except of a rounded zero', () => {
    expect(roundToStep(-2.5, 1)).toBe('-2');
    expect(roundToStep(-2.5, 1, 'half-up')).toBe('-3');
    expect(roundToStep(-0.04, 0.1)).toBe('0.0');
  });

  it('writes very large and very small numbers out', () => {
    expect(roundToStep(1.5e21, 1)).toBe('1500000000000000000000');
    expect(roundToSignificant(1.2345e-7, 3)).toBe('0.000000123');
  });

  it('refuses what cannot be rounded', () => {
    expect(() => roundToStep(Number.NaN, 1)).toThrow('cannot be rounded');
    expect(() => roundToStep(1, 0)).toThrow('step of 0');
    expect(() => roundToSignificant(1, 0)).toThrow('0 significant digits');
  });
});

describe('roundWithUncertainty', () => {
  it.each([
    [509.2958, 6.1388, '509.3', '6.1'],
    [1198.73, 21.8, '1199', '22'],
    [200_123, 3456, '200100', '3500'],
    [0.0214, 0.00054, '0.02140', '0.00054'],
    [3.14159, 0.0996, '3.14', '0.10'],
  ])('%d with U %d is printed as %s and %s', (value, expanded, shownValue, shownExpanded) => {
    expect(roundWithUncertainty(value, expanded)).toEqual({ value: shownValue, expanded: shownExpanded });
  });

  it('shows a value without doubt as it is', () => {
    expect(roundWithUncertainty(12.5, 0)).toEqual({ value: '12.5', expanded: '0' });
  });
});

describe('a figure as its method reports it', () => {
  it.each([
    [1199.92, { step: 1 }, '1200'],
    [24.36, { step: 1 }, '24'],
    [12.2, { step: 0.05 }, '12.20'],
    [38.26, { step: null, digits: 2 }, '38'],
    [992.25, { step: null, digits: null }, '992.2'],
  ])('%p by %p is %p', (value, rule, text) => {
    expect(reported(value, rule)).toBe(text);
  });
});
