import { oneWayAnova } from './anova.js';
import { fitLine, fitThroughOrigin } from './fit-line.js';
import { fitPolynomial } from './fit-polynomial.js';
import { studyPrecision } from './precision-study.js';

describe('oneWayAnova', () => {
  it('splits the squares of three groups worked out by hand', () => {
    // Means 2, 5, 8 around 5: between 3·(9 + 0 + 9) = 54 on 2; within 3·2 = 6 on 6; F = 27/1.
    const anova = oneWayAnova([
      [1, 2, 3],
      [4, 5, 6],
      [7, 8, 9],
    ]);
    expect(anova).toMatchObject({
      betweenDegreesOfFreedom: 2,
      withinDegreesOfFreedom: 6,
      betweenMeanSquare: 27,
      withinMeanSquare: 1,
      f: 27,
      rSquared: 0.9,
      residualSd: 1,
    });
    expect(anova.pValue).toBeCloseTo(0.001, 4); // (1 + 2·27/6)^(−3) = 10^(−3) exactly for 2 degrees of freedom between
  });

  it('refuses one group, an empty group, and as many groups as values', () => {
    expect(() => oneWayAnova([[1, 2]])).toThrow('two groups');
    expect(() => oneWayAnova([[1, 2], []])).toThrow('two groups');
    expect(() => oneWayAnova([[1], [2]])).toThrow('more values than groups');
  });
});

describe('fits', () => {
  it('a line through two points is exact, and one through equal x refused', () => {
    expect(fitLine([1, 3], [5, 9])).toMatchObject({ slope: 2, intercept: 3, rSquared: 1, residualSd: 0 });
    expect(() => fitLine([2, 2], [1, 5])).toThrow('differ in x');
    expect(() => fitLine([2], [1])).toThrow('two points');
  });

  it('a line over part of the rows leaves the others alone', () => {
    expect(fitLine([0, 1, 2, 3, 9], [9, 2, 4, 6, 0], 1, 4)).toMatchObject({ slope: 2, n: 3 });
  });

  it('a line through the origin needs a point away from it', () => {
    expect(() => fitThroughOrigin([0, 0], [1, 2])).toThrow('away from it');
  });

  it('a cubic is found again from its values', () => {
    const x = [-2, -1, 0, 1, 2, 3];
    const fit = fitPolynomial(
      x,
      x.map((each) => 1 - 2 * each + 0.5 * each ** 3),
      3,
    );
    [1, -2, 0, 0.5].forEach((coefficient, power) => expect(fit.coefficients[power]).toBeCloseTo(coefficient, 12));
    expect(() => fitPolynomial([1, 2, 3], [1, 2, 3], 2)).toThrow('more than 3 points');
  });
});

it('a precision study needs cells of equal size', () => {
  expect(() => studyPrecision([[1, 2], [3]])).toThrow('same number of values');
  expect(() => studyPrecision([[1, 2]])).toThrow('two cells');
});
