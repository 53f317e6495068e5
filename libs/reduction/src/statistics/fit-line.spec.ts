import { fitLine } from './fit-line.js';

describe('fitLine', () => {
  it('a line through two points is exact, and one through equal x refused', () => {
    expect(fitLine([1, 3], [5, 9])).toMatchObject({ slope: 2, intercept: 3, rSquared: 1, residualSd: 0 });
    expect(() => fitLine([2, 2], [1, 5])).toThrow('differ in x');
    expect(() => fitLine([2], [1])).toThrow('two points');
  });

  it('a line over part of the rows leaves the others alone', () => {
    expect(fitLine([0, 1, 2, 3, 9], [9, 2, 4, 6, 0], 1, 4)).toMatchObject({ slope: 2, n: 3 });
  });
});
