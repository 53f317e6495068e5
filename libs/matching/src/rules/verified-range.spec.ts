import { labWith, needsFor, sampleItem, verdictOn } from '#test/support/matching/sample-lab.js';
import type { Calibration } from '../register/item.js';

const [held] = sampleItem('load-cell', 'C').calibrations;
const holding = (...calibrations: Partial<Calibration>[]) =>
  labWith('C', { calibrations: calibrations.map((each) => ({ ...held!, ...each })) });
const reasonFor = (...calibrations: Partial<Calibration>[]) => {
  const { outcome, reason } = verdictOn('verified-range', { lab: holding(...calibrations) });
  return outcome === 'fail' ? reason : outcome;
};

// The modulus reads from 3000 MPa × 0.0005 × 40 mm² = 60 N, the peak is 2000 N.
describe('verified-range', () => {
  it.each([
    [59, 'pass'],
    [60, 'pass'],
    [61, 'below-verified'],
  ])('a range from %p N: %s', (from, expected) => expect(reasonFor({ from })).toBe(expected));

  it.each([
    [2001, 'pass'],
    [2000, 'pass'],
    [1999, 'above-verified'],
  ])('a range up to %p N: %s', (to, expected) => expect(reasonFor({ to })).toBe(expected));

  it.each([
    ['0.5', 'pass'],
    ['1', 'pass'],
    ['2', 'class-too-low'],
  ])('ISO 7500-1 class %s where class 1 is asked: %s', (className, expected) =>
    expect(reasonFor({ className })).toBe(expected),
  );

  it('lets ISO 7500-1 class 1 stand for ASTM E4, but not the other way round', () => {
    const american = needsFor({ methodId: 'astm-d638' });
    expect(verdictOn('verified-range', { needs: american }).outcome).toBe('pass');
    expect(reasonFor({ standard: 'ASTM E4', className: '1 %' })).toBe('class-too-low');
  });

  it('wants a calibration in the direction of the test', () => {
    expect(reasonFor({ direction: 'compression' })).toBe('never-verified');
  });

  it('takes a lower class when that was agreed', () => {
    const needs = needsFor({ options: { contactExtensometer: true, crossheadStrain: false, lowerForceClass: true } });
    expect(verdictOn('verified-range', { lab: holding({ className: '2' }), needs }).outcome).toBe('pass');
  });

  it('does not piece a range together from two classes', () => {
    expect(reasonFor({ from: 500, to: 5000 }, { from: 50, to: 500 })).toBe('below-verified');
  });
});
