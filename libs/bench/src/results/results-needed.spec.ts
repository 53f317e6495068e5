import { resultsNeeded } from './results-needed.js';
import { strengthFrom } from './strength-from.js';

describe('results that have to come from the bench', () => {
  it('are the peak where the strength follows from it', () => {
    expect(resultsNeeded(['modulus', 'peak-stress'], 'tension')).toEqual([
      { key: 'peak-load', typed: true },
      { key: 'modulus', typed: true },
      { key: 'peak-stress', typed: false },
    ]);
  });

  it('name the peak once, and leave it out where no strength is wanted', () => {
    expect(resultsNeeded(['peak-stress', 'peak-load'], 'tension').map(({ key }) => key)).toEqual([
      'peak-load',
      'peak-stress',
    ]);
    expect(resultsNeeded(['modulus'], 'tension').map(({ key }) => key)).toEqual(['modulus']);
  });

  it('of a component are typed as they were asked for', () => {
    expect(resultsNeeded(['peak-stress'], 'component')).toEqual([{ key: 'peak-stress', typed: true }]);
  });
});

describe('a strength', () => {
  const perStress = { value: 40, formula: 'F = σ·b·t', inputs: [] };

  it('follows from the peak: 2800 N / 40 N per MPa = 70 MPa', () => {
    expect(strengthFrom(2800, { testType: 'tension', isMeasured: true, perStress })).toEqual({
      value: 70,
      basis: { formula: 'F = σ·b·t', peak: 2800, inputs: [] },
    });
  });

  it('is not said before the lengths are measured, for a component, nor where no formula gives one', () => {
    expect(strengthFrom(2800, { testType: 'tension', isMeasured: false, perStress })).toBeNull();
    expect(strengthFrom(2800, { testType: 'component', isMeasured: true, perStress })).toBeNull();
    expect(
      strengthFrom(2800, { testType: 'tension', isMeasured: true, perStress: { ...perStress, value: NaN } }),
    ).toBeNull();
  });
});
