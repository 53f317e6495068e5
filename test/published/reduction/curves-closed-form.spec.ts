import { readFileSync } from 'node:fs';
import { curveOf } from '#test/curves/read-curve-file.js';
import { resultsOf } from '#test/published/reduction/results-of.js';

// Curves written from formulas (test/curves/ok), so that the answers are exact: closed-form-expected.json holds each
// formula and its answers, with the clause of the standard whose definition it exercises.
const expected = JSON.parse(readFileSync(new URL('./closed-form-expected.json', import.meta.url), 'utf8'));
const curve = (name: string) => curveOf(new URL(`../../curves/ok/${name}.csv`, import.meta.url));

const elasticShare = { way: 'regression', bounds: { over: 'peak-share', from: 0.1, to: 0.4 } } as const;
const strainChord = (from: number, to: number) => ({ way: 'chord', bounds: { over: 'strain', from, to } }) as const;

describe('closed-form curves', () => {
  it('finds the offset strengths of a Ramberg-Osgood curve to 0.01 %', () => {
    const answers = expected['ramberg-osgood'];
    const offsetStrains = [0.00001, 0.001, 0.002, 0.01];
    const { value } = resultsOf(curve('ramberg-osgood'), {
      results: ['modulus', 'offset-yield'],
      slope: elasticShare,
      offsetStrains,
    });
    expect(value('modulus') / answers.E_MPa).toBeCloseTo(1, 4);
    expect(value('offset-yield', 0.00001) / answers.Rp0_001_MPa).toBeCloseTo(1, 3);
    expect(value('offset-yield', 0.001) / answers.Rp0_1_MPa).toBeCloseTo(1, 4);
    expect(value('offset-yield', 0.002) / answers.Rp0_2_MPa).toBeCloseTo(1, 4);
    expect(value('offset-yield', 0.01) / answers.Rp1_MPa).toBeCloseTo(1, 4);
  });

  it('finds Rp0.2 of the same curve within its tolerance when the recorder has coarse steps', () => {
    const answers = expected['ramberg-osgood-quantised'];
    const { value } = resultsOf(curve('ramberg-osgood-quantised'), {
      results: ['offset-yield'],
      slope: elasticShare,
      offsetStrains: [0.002],
    });
    expect(Math.abs(value('offset-yield', 0.002) - answers.Rp0_2_MPa)).toBeLessThan(answers.tolerance_MPa);
  });

  it('finds slope, Rp0.2, strength and work of a bilinear curve', () => {
    const answers = expected['bilinear'];
    const results = ['modulus', 'offset-yield', 'peak-stress', 'strain-at-break', 'work-density-to-break'] as const;
    const { value, get } = resultsOf(curve('bilinear'), { results, slope: elasticShare, offsetStrains: [0.002] });
    expect(value('modulus') / answers.E_MPa).toBeCloseTo(1, 12);
    expect(value('offset-yield', 0.002) / answers.Rp0_2_MPa).toBeCloseTo(1, 12);
    expect(get('offset-yield', 0.002).points[0]!.x / answers.strain_at_Rp0_2).toBeCloseTo(1, 10);
    expect(value('peak-stress')).toBe(answers.Rm_MPa);
    expect(value('strain-at-break')).toBe(answers.strain_at_end);
    expect(value('work-density-to-break') / answers.work_per_volume_MJ_m3).toBeCloseTo(1, 12);
  });

  // ASTM D638 and D790, Annex A1: the straight part drawn down to zero stress is the corrected zero of strain.
  it.each([
    [
      'the line of the slope, bounds in shares of the peak',
      { way: 'slope-line' },
      { way: 'regression', bounds: { over: 'peak-share', from: 0.2, to: 0.8 } },
    ],
    [
      'the line of the slope, bounds in strain from the corrected zero',
      { way: 'slope-line' },
      strainChord(0.002, 0.005),
    ],
    ['the steepest line', { way: 'steepest', spanShare: 0.2 }, strainChord(0.002, 0.005)],
  ] as const)('compensates the toe by %s', (_, toe, slope) => {
    const answers = expected['toe-then-straight'];
    const { value, outcome } = resultsOf(curve('toe-then-straight'), {
      results: ['modulus', 'strain-at-break', 'stress-at-break'],
      toe,
      slope,
    });
    expect(outcome.toeShift).toBeCloseTo(answers.toe_zero_strain, 12);
    expect(value('modulus') / answers.E_MPa).toBeCloseTo(1, 10);
    expect(value('strain-at-break')).toBeCloseTo(answers.strain_at_break_toe_corrected, 12);
    expect(value('stress-at-break')).toBe(answers.stress_at_break_MPa);
  });

  it('leaves the strain alone when toe compensation is off', () => {
    const { value } = resultsOf(curve('toe-then-straight'), {
      results: ['strain-at-break'],
      slope: strainChord(0.005, 0.01),
    });
    expect(value('strain-at-break')).toBe(expected['toe-then-straight'].strain_at_break_uncorrected);
  });

  // Definitions of ISO 6892-1: ReH, ReL (transient left out), Rm, Agt, Ag, At, A from the extensometer.
  it('tells upper from lower yield and leaves the transient out', () => {
    const answers = expected['upper-and-lower-yield'];
    const results = [
      'upper-yield',
      'lower-yield',
      'peak-stress',
      'strain-at-peak',
      'plastic-strain-at-peak',
      'strain-at-break',
      'plastic-strain-at-break',
    ] as const;
    const { value } = resultsOf(curve('upper-and-lower-yield'), { results, slope: elasticShare });
    expect(value('upper-yield')).toBe(answers.ReH_MPa);
    expect(value('lower-yield')).toBe(answers.ReL_MPa);
    expect(value('peak-stress')).toBe(answers.Rm_MPa);
    expect(100 * value('strain-at-peak')).toBeCloseTo(answers.Agt_percent, 10);
    expect(100 * value('plastic-strain-at-peak')).toBeCloseTo(answers.Ag_percent, 8);
    expect(100 * value('strain-at-break')).toBeCloseTo(answers.At_percent, 10);
    expect(100 * value('plastic-strain-at-break')).toBeCloseTo(answers.A_percent_from_extensometer, 8);
  });

  // ISO 527-1: 0.05 % to 0.25 %, both ways; ASTM D3039: chord from 0.1 % to 0.3 %.
  it('finds the modulus of a curve that bends from the start, by chord and by regression', () => {
    const answers = expected['bending-from-the-start'];
    const modulus = (slope: Parameters<typeof resultsOf>[1]['slope']) =>
      resultsOf(curve('bending-from-the-start'), { results: ['modulus'], slope: slope! }).value('modulus');
    expect(modulus(strainChord(0.0005, 0.0025)) / answers.chord_0_0005_0_0025_MPa).toBeCloseTo(1, 12);
    expect(
      modulus({ ...strainChord(0.0005, 0.0025), way: 'regression' }) /
        answers.regression_same_window_equally_spaced_MPa,
    ).toBeCloseTo(1, 12);
    expect(modulus(strainChord(0.001, 0.003)) / answers.chord_0_001_0_003_MPa).toBeCloseTo(1, 12);
  });

  // Considère: the load peaks where the true strain equals n; ISO 10275 regression of ln σ over ln ε.
  it('finds strength, uniform strain and hardening of a power law', () => {
    const answers = expected['power-law-hardening'];
    const hardening = { fromStrain: 0.05, toStrain: 0.15, strain: 'total' } as const;
    const results = ['peak-stress', 'strain-at-peak', 'hardening-exponent', 'hardening-coefficient'] as const;
    const { value } = resultsOf(curve('power-law-hardening'), { results, hardening });
    expect(value('peak-stress')).toBeCloseTo(answers.Rm_MPa, 6);
    expect(value('strain-at-peak')).toBeCloseTo(answers.strain_at_Rm, 9);
    expect(value('hardening-exponent')).toBeCloseTo(answers.n, 8);
    expect(value('hardening-coefficient')).toBeCloseTo(answers.K_MPa, 5);
  });

  // ISO 178: σ = 3FL/(2bh²), ε = 6sh/L², Ef between 0.0005 and 0.0025; stress at the conventional deflection 1.5 h.
  it('reduces three-point bending', () => {
    const answers = expected['three-point-bending'];
    const bending = { spanMm: answers.L, deflectionAt: 'mid-span' } as const;
    const { value } = resultsOf(
      curve('three-point-bending'),
      {
        kind: 'flexure-3-point',
        section: 'rectangle',
        results: ['peak-load', 'modulus', 'stress-at-strain'],
        bending,
        slope: strainChord(0.0005, 0.0025),
        atStrains: [answers.strain_at_1_5h],
      },
      { widthMm: answers.b, thicknessMm: answers.h },
    );
    expect(value('modulus') / answers.Ef_MPa).toBeCloseTo(1, 12);
    expect(value('stress-at-strain', answers.strain_at_1_5h) / answers.stress_at_1_5h_MPa).toBeCloseTo(1, 12);
    expect(value('peak-load')).toBeCloseTo(answers.max_force_N, 10);
  });

  it('averages a peel trace between its bounds', () => {
    const answers = expected['peel-trace'];
    const [fromMm, toMm] = answers.window_mm;
    const { value } = resultsOf(
      curve('peel-trace'),
      { kind: 'peel', results: ['mean-peel'], trace: { fromMm, toMm, peakDropShare: 0.1 } },
      { widthMm: answers.width_mm },
    );
    expect(value('mean-peel') / answers.mean_peel_strength_N_per_mm).toBeCloseTo(1, 12);
  });

  // ISO 844: stress at 10 % relative deformation.
  it('finds the stress of a foam at 10 % strain', () => {
    const answers = expected['foam-compression'];
    const { value } = resultsOf(
      curve('foam-compression'),
      {
        kind: 'compression',
        results: ['stress-at-strain', 'modulus'],
        atStrains: [0.1],
        slope: strainChord(0.005, 0.02),
      },
      { areaMm2: answers.area_mm2, heightMm: answers.thickness_mm },
    );
    expect(1000 * value('stress-at-strain', 0.1)).toBeCloseTo(answers.sigma10_kPa, 9);
    expect(value('modulus')).toBeCloseTo(answers.modulus_MPa, 10);
  });
});
