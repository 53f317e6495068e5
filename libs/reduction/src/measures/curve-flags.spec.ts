import { reduceForSpec } from '#test/support/reduce-for-spec.js';
import { sayFlag, sayMissing } from './say-flag.js';

const flags = (columns: Record<string, number[]>, recipe = {}) => {
  const { outcome } = reduceForSpec(columns, ['peak-load'], recipe);
  return outcome.flags.map(sayFlag);
};

describe('flags of a curve', () => {
  it('say where time runs back', () => {
    expect(flags({ timeS: [0, 1, 0.5, 2], forceN: [0, 3, 6, 9] })).toEqual([
      'Time runs back from 1\u00a0s to 0.5\u00a0s.',
    ]);
  });

  it('say when the curve starts off zero by more than 1 % of its peak', () => {
    expect(flags({ forceN: [0.1, 5, 10] })).toEqual([]);
    expect(flags({ forceN: [0.2, 5, 10] })).toEqual([
      'The curve starts at 0.2\u00a0N; up to 0.1\u00a0N is usual. Check preload and zero.',
    ]);
  });

  it('say when toe compensation moved zero far', () => {
    const slope = { way: 'chord', bounds: { over: 'peak-share', from: 0.1, to: 0.9 } };
    const columns = { forceN: [0, 0.1, 5, 10], displacementMm: [0, 3, 4, 5] };
    // The chord from (3.1837, 1) to (4.8, 9) meets zero at 2.9816.
    expect(flags(columns, { kind: 'component', slope, toe: { way: 'slope-line' } })).toEqual([
      'Toe compensation moved zero by 2.982\u00a0mm; up to 1\u00a0mm is usual.',
    ]);
  });
});

it('a missing result is told in words', () => {
  expect(sayMissing({ reason: 'dimension-missing', what: 'widthMm' })).toBe('a dimension is missing (widthMm)');
});
