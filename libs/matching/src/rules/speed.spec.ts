import { labWith, needsFor, verdictOn } from '#test/support/matching/sample-lab.js';

const told = (details: Record<string, unknown>, needs = needsFor()) => {
  const { outcome, reason } = verdictOn('speed', { lab: labWith('F', {}, details), needs });
  return outcome === 'pass' ? outcome : reason;
};

// ISO 527-2 asks for 1 mm/min and then 50.
describe('speed', () => {
  it.each([
    [50, 'pass'],
    [49, 'too-fast'],
  ])('a frame that reaches %p mm/min: %s', (speedMaxMmPerMin, expected) =>
    expect(told({ speedMaxMmPerMin })).toBe(expected),
  );

  it.each([
    [1, 'pass'],
    [1.1, 'too-slow'],
  ])('a frame that goes no slower than %p mm/min: %s', (speedMinMmPerMin, expected) =>
    expect(told({ speedMinMmPerMin })).toBe(expected),
  );

  it.each([
    [2000, 'pass'],
    [1999, 'too-fast-at-force'],
  ])('a frame that is slow above %p N: %s', (aboveForceN, expected) => {
    expect(told({ speedLimits: [{ aboveForceN, speedMaxMmPerMin: 20 }] })).toBe(expected);
  });

  it('cautions when the method sets a load rate and the frame cannot control it', () => {
    const needs = { ...needsFor(), control: 'force' as const };
    expect(verdictOn('speed', { needs }).outcome).toBe('caution');
    expect(told({ controlModes: ['position', 'force'] }, needs)).toBe('pass');
  });
});
