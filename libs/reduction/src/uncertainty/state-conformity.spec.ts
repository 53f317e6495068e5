import { stateConformity } from './state-conformity.js';
import type { Specification } from './state-conformity.js';

const each = (change: Partial<Specification>): Specification => ({
  lower: 100,
  upper: 120,
  of: 'each',
  rule: 'simple',
  ...change,
});
const verdicts = (values: number[], specification: Specification, expanded: number | null = 4) =>
  stateConformity(values, specification, expanded).values.map(({ verdict }) => verdict);

describe('stateConformity', () => {
  it('counts a value exactly at a limit as within', () => {
    expect(verdicts([99.999, 100, 120, 120.001], each({}))).toEqual([
      'does-not-conform',
      'conforms',
      'conforms',
      'does-not-conform',
    ]);
  });

  it('asks a guarded value to clear each limit by U', () => {
    expect(verdicts([100, 103.999, 104, 116, 116.001, 121], each({ rule: 'guarded' }))).toEqual([
      'undecided',
      'undecided',
      'conforms',
      'conforms',
      'undecided',
      'does-not-conform',
    ]);
  });

  it('decides on exact decimals: 0.3 clears 0.1 by 0.2', () => {
    expect(verdicts([0.3, 0.29999], each({ lower: 0.1, upper: 1, rule: 'guarded' }), 0.2)).toEqual([
      'conforms',
      'undecided',
    ]);
  });

  it('lets one failure fail the whole, and one doubt leave it undecided', () => {
    expect(stateConformity([110, 90], each({}), null).verdict).toBe('does-not-conform');
    expect(stateConformity([110, 101], each({ rule: 'guarded' }), 4).verdict).toBe('undecided');
    expect(stateConformity([110, 101], each({}), null).verdict).toBe('conforms');
  });

  it('holds the mean against the limits when that was agreed', () => {
    expect(stateConformity([90, 112], each({ of: 'mean' }), null)).toMatchObject({
      verdict: 'conforms',
      values: [{ value: 101 }],
    });
  });

  it('gives the chance that the true value is within', () => {
    // U 4 with k 2 is a standard uncertainty of 2; one-sided at the limit it is one half, two of them above 97.725 %.
    const chance = (value: number) =>
      stateConformity([value], { lower: 100, of: 'each', rule: 'simple' }, 4).values[0]!.chanceWithin;
    expect(chance(100)).toBeCloseTo(0.5, 12);
    expect(chance(104)).toBeCloseTo(0.97725, 5);
    expect(stateConformity([104], each({}), null).values[0]!.chanceWithin).toBeNull();
    expect(stateConformity([99], each({}), 0).values[0]!.chanceWithin).toBe(0);
  });

  it('refuses what cannot be judged', () => {
    expect(() => stateConformity([1], { of: 'each', rule: 'simple' }, null)).toThrow('lower is missing');
    expect(() => stateConformity([1], each({ lower: 130 }), null)).toThrow('lower is 130');
    expect(() => stateConformity([], each({}), null)).toThrow('values');
    expect(() => stateConformity([1], each({ rule: 'guarded' }), null)).toThrow('expandedUncertainty is missing');
  });
});
