import { readFileSync } from 'node:fs';
import { describeSample, testGrubbs, toleranceBound, toleranceFactor } from '#libs/reduction/src/index.js';
import { readTable } from '#test/published/reduction/read-table.js';

const MPA = { Rp02: 'Rp02_MPa', Rp1: 'Rp1_MPa', Rm: 'Rm_MPa', slope: 'slope_MPa' };
const examples = JSON.parse(readFileSync(new URL('./stats-examples.json', import.meta.url), 'utf8'));

// ISO 2602:1980, breaking load of yarn (data from memory, results recomputed).
it('gives the confidence interval of the yarn of ISO 2602', () => {
  const { data, mean, s, ci95_two_sided } = examples.iso2602_yarn_example;
  const figures = describeSample(data);
  expect(figures.mean).toBeCloseTo(mean, 12);
  expect(figures.sd).toBeCloseTo(s, 12);
  expect(figures.meanInterval!.from).toBeCloseTo(ci95_two_sided[0], 10);
  expect(figures.meanInterval!.to).toBeCloseTo(ci95_two_sided[1], 10);
});

// CMH-17-1G 8.3.11.1.1 (maximum normed residual, which is Grubbs' two-sided test at 5 %), as quoted by cmstatr.
it.each(
  examples.mnr_examples as {
    source: string;
    data: number[];
    mean: number;
    s: number;
    mnr: number;
    outlier: false | number;
  }[],
)('judges $source as the handbook does', ({ data, mean, s, mnr, outlier }) => {
  const { mean: foundMean, sd } = describeSample(data);
  const test = testGrubbs(data)!;
  expect(foundMean).toBeCloseTo(mean, 3);
  expect(sd).toBeCloseTo(s, 3);
  expect(test.g).toBeCloseTo(mnr, 3);
  expect(test.isPossibleOutlier ? data[test.suspectIndex] : false).toBe(outlier);
});

// NIST Dataplot, VANGEL31.DAT (public domain: test/published/README.md) and the output printed in its help to GRUBBS TEST: s and G have
// their last digits cut, not rounded; the critical values 3.013 and 2.846 at 5 % and 10 % two-sided are about 0.001 below the exact formula.
it('judges 38 strengths of graphite and epoxy tape as NIST does', () => {
  const strengths = readTable('graphite-epoxy.csv').map((row) => Number(row['strength_ksi']));
  const { n, mean, sd, min, max } = describeSample(strengths);
  expect([n, min, max]).toEqual([38, 147, 231]);
  expect(mean).toBeCloseTo(185.7894, 3);
  expect(Math.trunc(sd! * 1e4) / 1e4).toBe(18.5954);
  const { suspectIndex, g, critical, isPossibleOutlier } = testGrubbs(strengths)!;
  expect(Math.trunc(g * 1e4) / 1e4).toBe(2.4312);
  expect(critical).toBeCloseTo(3.013, 2);
  expect(testGrubbs(strengths, 0.1)!.critical).toBeCloseTo(2.846, 2);
  expect([strengths[suspectIndex], isPossibleOutlier]).toEqual([231, false]);
});

// B-basis example of a normal sample: n 10, mean 90, s 5.2 gives 77.75587 (manual of cmstatr).
it('gives the B-basis of the example', () => {
  const { n, mean, s, kB, B_basis } = examples.basis_example;
  expect(toleranceFactor(n, 0.9, 0.95)).toBeCloseTo(kB, 8);
  expect(mean - toleranceFactor(n, 0.9, 0.95) * s).toBeCloseTo(B_basis, 8);
});

// Published Rp0.2, Rm and others of all 67 tests of 42CrMoS4 (CC BY 4.0: test/published/README.md); figures recomputed with SciPy.
describe('statistics over the 67 published results of 42CrMoS4', () => {
  const results = readTable('42crmos4/results.csv');
  const COLUMNS: Record<string, string> = { ...MPA, Ag: 'Ag_percent', A: 'A_percent', Z: 'Z_percent' };

  it.each(readTable('42crmos4/statistics.csv'))('describes $quantity of $batch', (answer) => {
    const column = COLUMNS[answer['quantity']!]!;
    const rows = results.filter((row) => ['all', row['batch']].includes(answer['batch']) && row[column]);
    const values = rows.map((row) => Number(row[column]));
    const { n, mean, sd, meanInterval } = describeSample(values);
    const grubbs = testGrubbs(values)!;
    const near = (found: number, heading: string) => {
      const expected = Number(answer[heading]);
      expect(Math.abs(found - expected)).toBeLessThan(2e-5 * Math.max(1, Math.abs(expected)));
    };
    expect(n).toBe(Number(answer['n']));
    near(mean, 'mean');
    near(sd!, 'sd');
    near(grubbs.g, 'grubbs_g');
    near(grubbs.critical, 'grubbs_critical');
    expect(rows[grubbs.suspectIndex]!['specimen']).toBe(answer['suspect']);
    expect(grubbs.isPossibleOutlier).toBe(answer['outlier'] === 'yes');
    near(meanInterval!.from, 'ci95_from');
    near(meanInterval!.to, 'ci95_to');
    near(toleranceBound(values, 0.9, 0.95)!.bound, 'b_basis_normal');
  });
});
