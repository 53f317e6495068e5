import { normalCdf, normalQuantile } from './normal.js';
import { noncentralTCdf } from './noncentral-t.js';
import { solveRising } from './solve-rising.js';
import { incompleteBeta, logGamma } from './special-functions.js';
import { studentCdf, studentQuantile } from './student.js';

describe('distributions', () => {
  it('the gamma function of whole and half numbers', () => {
    expect(logGamma(6)).toBeCloseTo(Math.log(120), 12);
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
    expect(logGamma(0.1)).toBeCloseTo(2.252712651734206, 12); // DLMF 5.4, from memory
  });

  it('the incomplete beta function where it is elementary', () => {
    expect(incompleteBeta(0.3, 1, 1)).toBeCloseTo(0.3, 14);
    expect(incompleteBeta(0.3, 2, 1)).toBeCloseTo(0.09, 14);
    expect(incompleteBeta(0, 3, 4)).toBe(0);
    expect(incompleteBeta(1, 3, 4)).toBe(1);
  });

  it('normal probabilities and quantiles lead back to each other, far out as well', () => {
    for (const p of [1e-12, 1e-5, 0.025, 0.4, 0.5, 0.9, 0.99999])
      expect(normalCdf(normalQuantile(p)) / p).toBeCloseTo(1, 10);
    expect(normalCdf(1.959963984540054)).toBeCloseTo(0.975, 15);
    expect(normalCdf(3) - normalCdf(3 - 1e-12)).toBeLessThan(1e-13); // no step where the two ways meet
    expect(normalCdf(Number.NaN)).toBeNaN();
  });

  it("Student's t with one degree of freedom is Cauchy's", () => {
    for (const t of [-5, -0.3, 0, 1, 20]) expect(studentCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
    expect(studentQuantile(0.75, 1)).toBeCloseTo(1, 12);
  });

  it('the noncentral t without noncentrality is the central one', () => {
    for (const nu of [1, 2, 9, 400])
      for (const t of [-2, 0, 0.7, 3]) expect(noncentralTCdf(t, nu, 0)).toBeCloseTo(studentCdf(t, nu), 10);
  });

  it('refuse probabilities that are none', () => {
    expect(() => normalQuantile(1)).toThrow('not between 0 and 1');
    expect(() => studentQuantile(0, 5)).toThrow('not between 0 and 1');
    expect(() => studentQuantile(0.5, 0)).toThrow('not enough');
  });
});

describe('solveRising', () => {
  it('finds a place outside the bracket that it was given, in few steps', () => {
    let calls = 0;
    const place = solveRising((x) => (calls++, x ** 3), 1000, 0, 1);
    expect(place).toBeCloseTo(10, 12);
    expect(calls).toBeLessThan(40);
  });
});
