import { grubbsCritical, testGrubbs } from './grubbs.js';

describe('testGrubbs', () => {
  const values = [10.1, 9.9, 10.0, 10.2, 13.5, 9.8];

  it('points at the value furthest from the mean on the side asked', () => {
    expect(testGrubbs(values)).toMatchObject({ suspectIndex: 4, isPossibleOutlier: true });
    expect(testGrubbs(values, 0.05, 'highest')!.suspectIndex).toBe(4);
    expect(testGrubbs(values, 0.05, 'lowest')).toMatchObject({ suspectIndex: 5, isPossibleOutlier: false });
  });

  it('calls a value an outlier only above the critical value', () => {
    // For n = 3 the critical value two-sided at 5 % is 1.1543; 0, 1, x approaches (n − 1)/√n = 1.1547 from below.
    expect(grubbsCritical(3, 0.05, 'either')).toBeCloseTo(1.1543, 4);
    expect(testGrubbs([0, 1, 30])!.isPossibleOutlier).toBe(false);
    expect(testGrubbs([0, 1, 300])!.isPossibleOutlier).toBe(true);
  });

  it('says nothing about two values or values that do not vary', () => {
    expect(testGrubbs([1, 2])).toBeNull();
    expect(testGrubbs([5, 5, 5, 5])).toBeNull();
    expect(() => grubbsCritical(2, 0.05, 'either')).toThrow('at least 3');
  });
});
