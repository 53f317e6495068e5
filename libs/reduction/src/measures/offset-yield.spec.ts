import { reduceForSpec } from '#test/support/reduce-for-spec.js';

// Straight at 100 000 MPa to 200 MPa (strain 0.002), then flat at 200 MPa to strain 0.01, then falling to 120 MPa at 0.012.
const strain = [0, 0.0005, 0.001, 0.0015, 0.002, 0.004, 0.01, 0.012];
const stressMPa = [0, 50, 100, 150, 200, 200, 200, 120];
const slope = { way: 'chord', bounds: { over: 'stress', from: 50, to: 150 } } as const;

describe('offset yield', () => {
  it('lies where the parallel line meets the curve, for each offset', () => {
    const { result } = reduceForSpec({ strain, stressMPa }, ['offset-yield'], { slope, offsetStrains: [0.001, 0.002] });
    expect(result('offset-yield', 0.001)).toMatchObject({ value: 200, unit: 'MPa', at: 0.001 });
    expect(result('offset-yield', 0.001).points[0]).toMatchObject({
      role: 'crossing',
      index: 4,
      x: expect.closeTo(0.003, 12),
      y: 200,
    });
    expect(result('offset-yield', 0.002).points[0]).toMatchObject({ role: 'crossing', x: expect.closeTo(0.004, 12) });
  });

  it('is missing when the curve ends before the line', () => {
    const { outcome } = reduceForSpec({ strain, stressMPa }, ['offset-yield'], { slope, offsetStrains: [0.002, 0.02] });
    expect(outcome).toMatchObject({ missing: [{ key: 'offset-yield', at: 0.02, reason: 'not-reached' }] });
  });

  it('is missing without a slope', () => {
    const { missing } = reduceForSpec({ strain, stressMPa }, ['offset-yield'], { offsetStrains: [0.002] });
    expect(missing('offset-yield')).toMatchObject({ reason: 'slope-missing', what: 'slope' });
  });

  it('asks for the offsets', () => {
    expect(reduceForSpec({ strain, stressMPa }, ['offset-yield'], { slope }).missing('offset-yield')).toMatchObject({
      reason: 'recipe-missing',
      what: 'offsetStrains',
    });
  });
});
