import type { UncertaintyComponent } from './uncertainty-types.js';
import { buildBudget, standardOf } from './build-budget.js';
import { repeatabilityOf, uncertaintyOfResult } from './budget-of-result.js';
import { exponentsOf } from './exponents-of.js';

const part = (change: Partial<UncertaintyComponent>): UncertaintyComponent => ({
  name: 'part',
  kind: 'standard',
  amount: 1,
  sensitivity: 1,
  degreesOfFreedom: null,
  ...change,
});

describe('buildBudget', () => {
  it('divides each amount by what its distribution asks', () => {
    expect(standardOf({ kind: 'standard', amount: 3 })).toBe(3);
    expect(standardOf({ kind: 'expanded', amount: 3 })).toBe(1.5);
    expect(standardOf({ kind: 'expanded', amount: 3, coverageK: 3 })).toBe(1);
    expect(standardOf({ kind: 'rectangular', amount: 3 })).toBeCloseTo(Math.sqrt(3), 12);
    expect(standardOf({ kind: 'triangular', amount: 3 })).toBeCloseTo(3 / Math.sqrt(6), 12);
    expect(standardOf({ kind: 'arcsine', amount: 3 })).toBeCloseTo(3 / Math.SQRT2, 12);
  });

  it('combines by root of squares and shares the variance out', () => {
    const budget = buildBudget([part({ amount: 3 }), part({ amount: 2, sensitivity: -2 })]);
    expect(budget).toMatchObject({ combined: 5, k: 2, expanded: 10, effectiveDegreesOfFreedom: null });
    expect(budget.lines.map(({ contribution }) => contribution)).toEqual([3, 4]);
    expect(budget.lines.map(({ share }) => share)).toEqual([expect.closeTo(0.36, 12), expect.closeTo(0.64, 12)]);
  });

  it('takes t at the effective degrees of freedom, cut to whole ones', () => {
    // Two equal parts, one with 4 degrees of freedom: 4·4 = 16; t(0.975, 16) = 2.1199 (GUM table G.2).
    const budget = buildBudget([part({ degreesOfFreedom: 4 }), part({})], { way: 'confidence', confidence: 0.95 });
    expect(budget.effectiveDegreesOfFreedom).toBeCloseTo(16, 10);
    expect(budget.k).toBeCloseTo(2.1199, 4);
    expect(buildBudget([part({})], { way: 'confidence', confidence: 0.95 }).k).toBeCloseTo(1.96, 3);
  });

  it('refuses a negative amount by name, and an empty budget', () => {
    expect(() => buildBudget([part({ name: 'force', amount: -1 })])).toThrow('force.amount is -1');
    expect(() => buildBudget([])).toThrow('components');
  });
});

describe('uncertaintyOfResult', () => {
  const onePercent = [{ kind: 'standard', amount: 1, degreesOfFreedom: null }] as const;

  it('weighs each source by its exponent', () => {
    // Flexural modulus of a rectangle: F·L³/(b·h³·s): 1 + 9 + 1 + 9 + 1 = 21 in squares.
    const all = {
      force: onePercent,
      span: onePercent,
      width: onePercent,
      thickness: onePercent,
      extension: onePercent,
    };
    const result = uncertaintyOfResult(2500, exponentsOf('modulus', 'bending')!, all)!;
    expect(result.budget.combined).toBeCloseTo(Math.sqrt(21), 10);
    expect(result.expanded).toBeCloseTo((2500 * 2 * Math.sqrt(21)) / 100, 8);
  });

  it('counts a size that enters stress and strain once', () => {
    expect(exponentsOf('modulus', 'torsion')).toEqual({ force: 1, diameter: -4, extension: -1, gaugeLength: 1 });
    expect(exponentsOf('modulus', 'axial')).toEqual({
      force: 1,
      area: -1,
      width: -1,
      thickness: -1,
      diameter: -2,
      extension: -1,
      gaugeLength: 1,
    });
  });

  it('knows the product of each kind of test', () => {
    expect(exponentsOf('peak-stress', 'lap-shear')).toEqual({
      force: 1,
      area: -1,
      width: -1,
      overlap: -1,
    });
    expect(exponentsOf('mean-peel', 'per-width')).toEqual({ force: 1, width: -1 });
    expect(exponentsOf('mean-tear-peaks', 'per-thickness')).toEqual({ force: 1, thickness: -1 });
    expect(exponentsOf('stiffness', 'load')).toEqual({ force: 1, extension: -1 });
    expect(exponentsOf('hardening-exponent', 'axial')).toBeNull();
  });

  it('adds the scatter of the specimens to the doubt of their mean', () => {
    const repeatability = repeatabilityOf(200, 6, 9)!;
    expect(repeatability).toEqual({ kind: 'standard', amount: 1, degreesOfFreedom: 8 });
    expect(uncertaintyOfResult(200, { force: 1 }, { force: onePercent, repeatability })!.budget.combined).toBeCloseTo(
      Math.SQRT2,
      12,
    );
    expect(repeatabilityOf(200, null, 1)).toBeNull();
  });

  it('has nothing to say without a source or about zero', () => {
    expect(uncertaintyOfResult(5, { force: 1 }, {})).toBeNull();
    expect(uncertaintyOfResult(0, { force: 1 }, { force: onePercent })).toBeNull();
  });
});
