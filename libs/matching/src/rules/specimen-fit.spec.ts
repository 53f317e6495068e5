import { labWith, needsFor, SAMPLE_ASK, SAMPLE_LAB, verdictOn } from '#test/support/matching/sample-lab.js';
import type { Ask } from '../ask/ask.js';
import type { Needs } from '../ask/needs.js';

const told = (geometry: Partial<Ask['geometry']>, lab = SAMPLE_LAB) => {
  const needs = needsFor({ geometry: { ...SAMPLE_ASK.geometry, ...geometry } });
  const { outcome, reason } = verdictOn('specimen-fit', { lab, needs });
  return outcome === 'pass' ? outcome : reason;
};

describe('specimen-fit', () => {
  // Faces of 25 mm take 1 to 10 mm in grips of 50 mm that open to 12.
  it.each([
    [10, 'pass'],
    [10.1, 'too-thick'],
    [1, 'pass'],
    [0.9, 'too-thin'],
  ])('ends of %p mm thickness: %s', (endThicknessMm, expected) => expect(told({ endThicknessMm })).toBe(expected));

  it.each([
    [25, 'pass'],
    [25.1, 'too-wide-for-face'],
  ])('ends of %p mm width: %s', (endWidthMm, expected) => expect(told({ endWidthMm })).toBe(expected));

  it('refuses ends that the grip does not take', () => {
    expect(told({}, labWith('G', {}, { acceptedEnds: ['round'] }))).toBe('end-not-taken');
  });

  it('wants a spherical seat where the method does', () => {
    const seat = (sphericalSeat: 'required' | 'preferred' | 'not-needed'): Needs => ({
      ...needsFor(),
      ends: { by: 'platens', sphericalSeat },
    });
    expect(
      ['required', 'preferred', 'not-needed'].map(
        (each) => verdictOn('specimen-fit', { needs: seat(each as 'required') }).outcome,
      ),
    ).toEqual(['fail', 'caution', 'pass']);
  });
});
