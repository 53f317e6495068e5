import { readFileSync } from 'node:fs';
import type { Geometry, Method } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { reduceAsLab } from '#test/curves/known/reduce-as-lab.js';
import { curveOf } from '#test/curves/read-curve-file.js';
import { resultsOf } from '#test/published/reduction/results-of.js';

// Curves written from formulas (test/curves/ok), so that the answers are exact: closed-form-expected.json holds each
// formula and its answers, with the clause of the standard whose definition it exercises.
const expected = JSON.parse(readFileSync(new URL('./closed-form-expected.json', import.meta.url), 'utf8'));
const fileOf = (name: string) => new URL(`../../curves/ok/${name}.csv`, import.meta.url);
const curve = (name: string) => curveOf(fileOf(name));

/** The way of a lab: proposed format, reader, the library's own recipe; hands out what would be kept, by key. */
function byLibrary(name: string, id: string, geometry: Geometry) {
  const method: Method = METHODS.find((each) => each.id === id)!;
  const seen = reduceAsLab(readFileSync(fileOf(name)), { method, geometry });
  if (seen.state === 'refused') throw new Error(seen.why);
  const get = (key: string) => seen.results.find((result) => result.key === key)!;
  return { value: (key: string) => get(key).value, flags: (key: string) => get(key).basis['flags'] };
}

const ROUND: Geometry = { shape: 'round', diameterMm: 10, gaugeLengthMm: 50 };
const BAR: Geometry = { shape: 'rectangle', widthMm: 10, thicknessMm: 4, gaugeLengthMm: 50 };

describe('closed-form curves by the methods of the library', () => {
  it.each(['iso-6892-1', 'astm-e8'])('%s finds Rp0.2 of a Ramberg-Osgood curve to 0.01 %', (id) => {
    const { value } = byLibrary('ramberg-osgood', id, ROUND);
    expect(value('offset-yield') / expected['ramberg-osgood'].Rp0_2_MPa).toBeCloseTo(1, 4);
  });

  it('ISO 6892-1 finds its modulus too, and Rp0.2 within its tolerance when the recorder has coarse steps', () => {
    expect(byLibrary('ramberg-osgood', 'iso-6892-1', ROUND).value('modulus') / 70_000).toBeCloseTo(1, 4);
    const answers = expected['ramberg-osgood-quantised'];
    const found = byLibrary('ramberg-osgood-quantised', 'iso-6892-1', ROUND).value('offset-yield');
    expect(Math.abs(found - answers.Rp0_2_MPa)).toBeLessThan(answers.tolerance_MPa);
  });

  it('ISO 6892-1 finds slope, Rp0.2 and strength of a bilinear curve', () => {
    const answers = expected['bilinear'];
    const { value } = byLibrary('bilinear', 'iso-6892-1', ROUND);
    expect(value('modulus') / answers.E_MPa).toBeCloseTo(1, 12);
    expect(value('offset-yield') / answers.Rp0_2_MPa).toBeCloseTo(1, 12);
    expect(value('peak-stress')).toBe(answers.Rm_MPa);
  });

  // Definitions of ISO 6892-1: ReH, ReL (transient left out), Rm, Ag.
  it('ISO 6892-1 tells upper from lower yield and leaves the transient out', () => {
    const answers = expected['upper-and-lower-yield'];
    const { value } = byLibrary('upper-and-lower-yield', 'iso-6892-1', ROUND);
    expect(value('upper-yield')).toBe(answers.ReH_MPa);
    expect(value('lower-yield')).toBe(answers.ReL_MPa);
    expect(value('peak-stress')).toBe(answers.Rm_MPa);
    expect(100 * value('plastic-strain-at-peak')).toBeCloseTo(answers.Ag_percent, 8);
  });

  // ASTM D638, Annex A1: the straight part drawn down to zero stress is the corrected zero of strain. From there the chord begins at a
  // strain of 0.0005, on the parabola of the toe (ε = 0.0015, σ = 1.6875 MPa), and ends on the line (0.0035, 7.5 MPa): 2906.25 MPa.
  it.each(['iso-527-2', 'astm-d638'])('%s takes out the toe, and says that its chord begins in it', (id) => {
    const answers = expected['toe-then-straight'];
    const { value, flags } = byLibrary('toe-then-straight', id, BAR);
    expect(value('modulus') / 2906.25).toBeCloseTo(1, 2);
    expect(flags('modulus')).toContainEqual(expect.stringMatching(/^The straight part bends/));
    expect(value('strain-at-break') / answers.strain_at_break_toe_corrected).toBeCloseTo(1, 3);
    expect(value('peak-stress')).toBe(answers.stress_at_break_MPa);
  });

  it.each([
    ['iso-527-2', 'chord_0_0005_0_0025_MPa'],
    ['astm-d3039', 'chord_0_001_0_003_MPa'],
  ])('%s draws its chord on a curve that bends from the start', (id, answer) => {
    const found = byLibrary('bending-from-the-start', id, BAR).value('modulus');
    expect(found / expected['bending-from-the-start'][answer]).toBeCloseTo(1, 10);
  });

  // ISO 178: σ = 3FL/(2bh²), ε = 6sh/L², Ef between 0.0005 and 0.0025; the bar is straight, so that σ at 3.5 % is 0.035·Ef.
  it('ISO 178 reduces three-point bending', () => {
    const { L: spanMm, b: widthMm, h: thicknessMm, Ef_MPa, max_force_N } = expected['three-point-bending'];
    const geometry: Geometry = { shape: 'rectangle', spanMm, widthMm, thicknessMm };
    const { value } = byLibrary('three-point-bending', 'iso-178', geometry);
    expect(value('modulus') / Ef_MPa).toBeCloseTo(1, 10);
    expect(value('stress-at-strain') / (0.035 * Ef_MPa)).toBeCloseTo(1, 8);
    expect(value('peak-load')).toBeCloseTo(max_force_N, 10);
  });

  it('ISO 844 finds the stress of a foam at 10 % deformation', () => {
    const { area_mm2, thickness_mm: heightMm, sigma10_kPa } = expected['foam-compression'];
    const side = Math.sqrt(area_mm2);
    const geometry: Geometry = { shape: 'rectangle', widthMm: side, thicknessMm: side, heightMm };
    expect(1000 * byLibrary('foam-compression', 'iso-844', geometry).value('stress-at-strain')).toBeCloseTo(
      sigma10_kPa,
      6,
    );
  });
});

const elasticShare = { way: 'regression', bounds: { over: 'peak-share', from: 0.1, to: 0.4 } } as const;
const strainChord = (from: number, to: number) => ({ way: 'chord', bounds: { over: 'strain', from, to } }) as const;

// No method of the library asks for these; a method of a lab's own may.
describe('ways of a recipe that the library leaves out', () => {
  it('finds other offset strengths of a Ramberg-Osgood curve to 0.01 %', () => {
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

  it('finds the work to break of a bilinear curve, and where it crosses the offset', () => {
    const answers = expected['bilinear'];
    const results = ['offset-yield', 'strain-at-break', 'work-density-to-break'] as const;
    const { value, get } = resultsOf(curve('bilinear'), { results, slope: elasticShare, offsetStrains: [0.002] });
    expect(get('offset-yield', 0.002).points[0]!.x / answers.strain_at_Rp0_2).toBeCloseTo(1, 10);
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

  // Definitions of ISO 6892-1: Agt, At, A from the extensometer.
  it('finds the total and the plastic strains of a metal with a yield point', () => {
    const answers = expected['upper-and-lower-yield'];
    const results = ['strain-at-peak', 'strain-at-break', 'plastic-strain-at-break'] as const;
    const { value } = resultsOf(curve('upper-and-lower-yield'), { results, slope: elasticShare });
    expect(100 * value('strain-at-peak')).toBeCloseTo(answers.Agt_percent, 10);
    expect(100 * value('strain-at-break')).toBeCloseTo(answers.At_percent, 10);
    expect(100 * value('plastic-strain-at-break')).toBeCloseTo(answers.A_percent_from_extensometer, 8);
  });

  // ISO 527-1: 0.05 % to 0.25 % by regression.
  it('finds the modulus of a curve that bends from the start by regression', () => {
    const answer = expected['bending-from-the-start'].regression_same_window_equally_spaced_MPa;
    const slope = { ...strainChord(0.0005, 0.0025), way: 'regression' } as const;
    const { value } = resultsOf(curve('bending-from-the-start'), { results: ['modulus'], slope });
    expect(value('modulus') / answer).toBeCloseTo(1, 12);
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

  // ISO 178: stress at the conventional deflection 1.5 h.
  it('finds the flexural stress at a conventional deflection', () => {
    const answers = expected['three-point-bending'];
    const bending = { spanMm: answers.L, deflectionAt: 'mid-span' } as const;
    const { value } = resultsOf(
      curve('three-point-bending'),
      {
        kind: 'flexure-3-point',
        section: 'rectangle',
        results: ['stress-at-strain'],
        bending,
        atStrains: [answers.strain_at_1_5h],
      },
      { widthMm: answers.b, thicknessMm: answers.h },
    );
    expect(value('stress-at-strain', answers.strain_at_1_5h) / answers.stress_at_1_5h_MPa).toBeCloseTo(1, 12);
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

  it('finds the modulus of a foam', () => {
    const answers = expected['foam-compression'];
    const { value } = resultsOf(
      curve('foam-compression'),
      {
        kind: 'compression',
        results: ['modulus'],
        slope: strainChord(0.005, 0.02),
      },
      { areaMm2: answers.area_mm2, heightMm: answers.thickness_mm },
    );
    expect(value('modulus')).toBeCloseTo(answers.modulus_MPa, 10);
  });
});
