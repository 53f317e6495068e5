import { toleranceBound, toleranceFactor } from './tolerance-bound.js';

describe('toleranceBound', () => {
  it('lies k standard deviations below the mean, or above it', () => {
    // n 3, mean 20, s 10; kB(3) = 6.1553 (CMH-17).
    const values = [10, 20, 30];
    expect(toleranceBound(values, 0.9, 0.95)!.bound).toBeCloseTo(20 - 61.553, 2);
    expect(toleranceBound(values, 0.9, 0.95, 'upper')!.bound).toBeCloseTo(20 + 61.553, 2);
  });

  it('needs two values', () => {
    expect(toleranceBound([3], 0.9, 0.95)).toBeNull();
    expect(() => toleranceFactor(1, 0.9, 0.95)).toThrow('at least 2');
  });

  it('nears the normal quantile for a big sample, where the usual series fail', () => {
    expect(toleranceFactor(100_000, 0.99, 0.95)).toBeCloseTo(2.3263, 1);
    expect(toleranceFactor(2000, 0.9, 0.5)).toBeCloseTo(1.2816, 3);
  });
});
