import { reduceForSpec } from '#test/support/reduce-for-spec.js';

// σ = 600·ε^0.15 in true stress and true plastic strain, written as engineering stress and strain with E = 70 000 MPa.
const plastic = Array.from({ length: 140 }, (_, row) => (row + 1) / 1000);
const trueStress = plastic.map((strain) => 600 * strain ** 0.15);
const trueStrain = plastic.map((strain, row) => strain + trueStress[row]! / 70_000);
const strain = [0, 0.001, ...trueStrain.map(Math.expm1)];
const stressMPa = [0, 70, ...trueStress.map((stress, row) => stress / Math.exp(trueStrain[row]!))];
const slope = { way: 'chord', bounds: { over: 'strain', from: 0, to: 0.001 } } as const;
const hardening = { fromStrain: 0.02, toStrain: 0.12, strain: 'plastic' } as const;

describe('hardening', () => {
  it('finds exponent and coefficient of a power law in plastic strain', () => {
    const { value } = reduceForSpec({ strain, stressMPa }, ['hardening-exponent', 'hardening-coefficient'], {
      slope,
      hardening,
    });
    // The elastic part is taken off by the true stress over E, which differs in the fifth digit from the law above.
    expect(value('hardening-exponent')).toBeCloseTo(0.15, 4);
    expect(value('hardening-coefficient')).toBeCloseTo(600, 1);
  });

  it('needs three points between the bounds', () => {
    const { missing } = reduceForSpec({ strain, stressMPa }, ['hardening-exponent'], {
      slope,
      hardening: { ...hardening, toStrain: 0.0215 },
    });
    expect(missing('hardening-exponent')).toMatchObject({ reason: 'too-few-points' });
  });

  it('asks for its bounds', () => {
    expect(reduceForSpec({ strain, stressMPa }, ['hardening-exponent']).missing('hardening-exponent')).toMatchObject({
      reason: 'recipe-missing',
      what: 'hardening',
    });
  });
});
