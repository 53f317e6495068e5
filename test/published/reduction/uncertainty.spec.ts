import { readFileSync } from 'node:fs';
import {
  buildBudget,
  exponentsOf,
  roundWithUncertainty,
  stateConformity,
  uncertaintyOfResult,
} from '#libs/reduction/src/index.js';
import type { DoubtKind, UncertaintyComponent } from '#libs/reduction/src/index.js';

const examples = JSON.parse(readFileSync(new URL('./uncertainty-examples.json', import.meta.url), 'utf8'));

const component = (
  name: string,
  kind: DoubtKind,
  amount: number,
  sensitivity = 1,
  degreesOfFreedom: number | null = null,
): UncertaintyComponent => ({
  name,
  kind,
  amount,
  sensitivity,
  degreesOfFreedom,
});

// JCGM 100:2008 (GUM), example H.1: calibration of an end gauge of 50 mm, in nm.
describe('the end gauge of GUM H.1', () => {
  const { inputs, ...answers } = examples.gum_H1_end_gauge;
  /** The example takes the nominal length in its sensitivities. */
  const lengthNm = 50e6;
  const d = buildBudget(
    inputs.d_nm.slice(1).map(([u, nu]: [number, number], at: number) => component(`d${at}`, 'standard', u, 1, nu)),
  );
  const [thetaMean, thetaSd] = inputs.theta_bar;
  const alpha = inputs.alpha_s[0];
  const thetaVariance = thetaSd ** 2 + 0.5 ** 2 / 2;
  // l = ls + d − ls(δα·θ + αs·δθ); θ = θ̄ + Δ, Δ arcsine of half-width 0.5 °C; the sensitivity to αs is zero because δθ is.
  const budget = buildBudget(
    [
      component('standard gauge', 'standard', inputs.ls_nm[1], 1, inputs.ls_nm[2]),
      component('difference', 'standard', d.combined, 1, d.effectiveDegreesOfFreedom),
      component('difference of expansion', 'rectangular', 1e-6, -lengthNm * thetaMean, 50),
      component('difference of temperature', 'rectangular', 0.05, -lengthNm * alpha, 2),
    ],
    { way: 'confidence', confidence: 0.99 },
  );

  it('has the doubt of the difference', () => {
    expect(d.combined).toBeCloseTo(answers.u_d_nm, 9);
    expect(d.effectiveDegreesOfFreedom).toBeCloseTo(answers.nu_d, 9);
  });

  it('has the printed combined doubt, degrees of freedom, t and U', () => {
    expect(budget.combined).toBeCloseTo(answers.u_c_nm, 6);
    expect(budget.combined.toFixed(0)).toBe(String(answers.printed.u_c_nm));
    expect(Math.floor(budget.effectiveDegreesOfFreedom!)).toBe(answers.printed.nu_eff);
    expect(budget.effectiveDegreesOfFreedom).toBeCloseTo(answers.nu_eff, 6);
    expect(budget.k).toBeCloseTo(answers['t_0.995_nu16'], 9);
    // The example expands the rounded 32 nm.
    const printed = budget.k * Math.round(budget.combined);
    expect(printed).toBeCloseTo(answers.U99_nm, 8);
    expect(printed.toFixed(0)).toBe(String(answers.printed.U99_nm));
  });

  it('has the temperature of the bed from mean and cycle', () => {
    const theta = buildBudget([component('mean', 'standard', thetaSd), component('cycle', 'arcsine', 0.5)]);
    expect(theta.combined ** 2).toBeCloseTo(thetaVariance, 12);
  });
});

// ISO 6892-1:2009 Annex J, 2016 and 2019 Annex K (figures from memory): class 1 machine and extensometer.
describe('the annex of ISO 6892-1', () => {
  const { inputs_percent: pct, combined_percent: combined, printed_expanded_k2: printed } = examples.iso6892_1_annex;
  const force = [{ kind: 'expanded', amount: pct.force, degreesOfFreedom: null }] as const;
  const extension = [{ kind: 'expanded', amount: pct.extension, degreesOfFreedom: null }] as const;
  const area = [{ kind: 'rectangular', amount: pct.S0, degreesOfFreedom: null }] as const;
  const gaugeLength = [{ kind: 'rectangular', amount: pct.gauge_length, degreesOfFreedom: null }] as const;

  it.each(['upper-yield', 'lower-yield', 'peak-stress'] as const)('gives 0.91 % and 1.82 %% for %s', (key) => {
    const { budget } = uncertaintyOfResult(500, exponentsOf(key, 'axial')!, { force, area })!;
    expect(budget.combined).toBeCloseTo(combined['ReH ReL Rm'], 12);
    expect((2 * Number(budget.combined.toFixed(2))).toFixed(2)).toBe(String(printed.Rm));
  });

  it('gives the same for the elongation', () => {
    const { budget } = uncertaintyOfResult(0.2, exponentsOf('elongation-after-fracture', 'axial')!, {
      extension,
      gaugeLength,
    })!;
    expect(budget.combined).toBeCloseTo(combined.A, 12);
  });

  it('gives 1.29 % and 2.58 % for the reduction of area', () => {
    const budget = buildBudget([component('S0', 'rectangular', pct.S0), component('Su', 'rectangular', pct.Su)]);
    expect(budget.combined).toBeCloseTo(combined.Z, 12);
    expect((2 * Number(budget.combined.toFixed(2))).toFixed(2)).toBe(String(printed.Z));
  });
});

// NIST TN 1900, example E13: thermal expansion α = (L1 − L0)/(L0(T1 − T0)).
it('propagates the expansion coefficient of NIST TN 1900 E13', () => {
  const { L0, L1, T0, T1, alpha, u, printed } = examples.nist_tn1900_E13;
  const span = T1[0] - T0[0];
  const budget = buildBudget([
    component('L0', 'standard', L0[1], -L1[0] / (L0[0] ** 2 * span)),
    component('L1', 'standard', L1[1], 1 / (L0[0] * span)),
    component('T0', 'standard', T0[1], alpha / span),
    component('T1', 'standard', T1[1], -alpha / span),
  ]);
  expect(budget.combined / u).toBeCloseTo(1, 9);
  expect(budget.combined.toPrecision(3)).toBe(printed.u.toPrecision(3));
});

// EA-4/02 M:2022, supplement S2: a weight of 10 kg, in mg (from memory).
it('combines the weight of EA-4/02 S2', () => {
  const { components_mg, printed } = examples.ea_4_02_S2_10kg;
  const budget = buildBudget(
    components_mg.map((amount: number, at: number) => component(`part ${at}`, 'standard', amount)),
  );
  expect(budget.combined.toFixed(1)).toBe(String(printed.u_c_mg));
  expect(budget.expanded.toFixed(0)).toBe(String(printed.U_mg));
});

// A constructed budget of a round tensile bar, worked out by hand in uncertainty-examples.json.
it('budgets the strength of a round bar from force class, calibration, resolution and micrometer', () => {
  const example = examples.constructed_tensile_budget;
  const [classLimit, calibration, resolution, micrometer, readings] = example.components_relative_percent;
  const standard = (part: { u_percent: number }) =>
    ({ kind: 'standard', amount: part.u_percent, degreesOfFreedom: null }) as const;
  const result = uncertaintyOfResult(example.Rm_MPa, exponentsOf('peak-stress', 'axial')!, {
    force: [
      { kind: 'rectangular', amount: 1, degreesOfFreedom: null },
      { kind: 'expanded', amount: 0.24, coverageK: 2, degreesOfFreedom: null },
      standard(resolution),
    ],
    diameter: [{ kind: 'rectangular', amount: 0.1, degreesOfFreedom: null }, standard(readings)],
  })!;
  expect(result.budget.combined).toBeCloseTo(example.u_c_percent, 9);
  expect(result.expanded).toBeCloseTo(example.U_k2_MPa, 7);
  expect(roundWithUncertainty(example.Rm_MPa, result.expanded)).toEqual({ value: '509.3', expanded: '6.1' });
  expect(result.budget.lines.map((line) => line.contribution)).toEqual(
    [classLimit, calibration, resolution, micrometer, readings].map((part) =>
      expect.closeTo(part.contribution_percent, 9),
    ),
  );
});

// ILAC-G8:09/2019 and JCGM 106:2012 (from memory): LSL 355 MPa, U 6 MPa.
describe('decision rules', () => {
  const { LSL_MPa: lower, U_MPa: expanded, x } = examples.decision_rules.example;
  it.each([
    [x[0], 'does-not-conform', 'does-not-conform'],
    [x[1], 'conforms', 'undecided'],
    [x[2], 'conforms', 'conforms'],
  ] as const)('judges %d MPa as %s (simple) and %s (guarded)', (value, simple, guarded) => {
    expect(stateConformity([value], { lower, of: 'each', rule: 'simple' }, expanded).verdict).toBe(simple);
    expect(stateConformity([value], { lower, of: 'each', rule: 'guarded' }, expanded).verdict).toBe(guarded);
  });
});
