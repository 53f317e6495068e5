import { reduceForSpec } from '#test/support/reduce-for-spec.js';

const both = (strain: number[], stressMPa: number[], yieldPoint = { dropShare: 0.005, lastingStrain: 0.0005 }) =>
  reduceForSpec({ strain, stressMPa }, ['upper-yield', 'lower-yield'], { yieldPoint });

describe('yield point', () => {
  // Up to 300, dip to 262 (transient), back to 272, plateau between 268 and 272, then hardening to 400.
  const strain = [0, 0.001, 0.0015, 0.0018, 0.003, 0.005, 0.007, 0.009, 0.011, 0.05, 0.15];
  const stress = [0, 200, 300, 262, 272, 268, 272, 269, 273, 340, 400];

  it('takes the highest before the drop, and the lowest after the transient', () => {
    const { result } = both(strain, stress);
    expect(result('upper-yield')).toMatchObject({ value: 300, points: [{ index: 2 }] });
    expect(result('lower-yield')).toMatchObject({ value: 268, points: [{ index: 5 }, { index: 2 }] });
  });

  it('takes the only dip as the lower yield when the stress just rises from it', () => {
    expect(both([0, 0.0015, 0.002, 0.003, 0.05], [0, 300, 280, 285, 400]).value('lower-yield')).toBe(280);
  });

  it('takes a drop of just 0.5 % and not a smaller one', () => {
    const at = (drop: number) => both([0, 0.0015, 0.0022, 0.003, 0.05], [0, 300, 300 - drop, 299, 400]);
    expect(at(1.5).value('upper-yield')).toBe(300);
    expect(at(1.4).missing('upper-yield')).toMatchObject({ reason: 'no-yield-drop' });
  });

  it('takes no drop that the stress makes good within the next 0.05 % of strain', () => {
    expect(both([0, 0.0015, 0.0017, 0.0019, 0.05], [0, 300, 290, 301, 400]).missing('lower-yield')).toMatchObject({
      reason: 'no-yield-drop',
    });
  });

  // 4 MPa of 400 are 1 % between rows. The first row after the top may stand for it: then the load rose by little more than nothing.
  it('says when the rows at the upper yield are so far apart that its top may lie between them', () => {
    const at = (...rise: number[]) =>
      both([0, 0.0018, 0.0019, 0.002, 0.003, 0.004, 0.05], [0, ...rise, 380, 380, 420]).flagsOf('upper-yield');
    expect(at(392, 396, 400)).toEqual([]);
    expect(at(380, 395.9, 400)).toEqual(['coarse-at-yield']);
    expect(at(360, 399, 400)).toEqual(['coarse-at-yield']);
  });

  it('does not take necking for yielding', () => {
    expect(both([0, 0.002, 0.08, 0.12, 0.15], [0, 300, 400, 380, 300]).missing('upper-yield')).toMatchObject({
      reason: 'no-yield-drop',
    });
  });

  it('takes an early peak that is never reached again', () => {
    expect(both([0, 0.0015, 0.002, 0.01, 0.05], [0, 300, 280, 281, 290]).value('upper-yield')).toBe(300);
  });
});
