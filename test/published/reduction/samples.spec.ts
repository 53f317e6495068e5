import { readFileSync } from 'node:fs';
import {
  describeSample,
  oneWayAnova,
  studyPrecision,
  testGrubbs,
  toleranceBound,
  toleranceFactor,
} from '#libs/reduction/src/index.js';
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

// B-basis example of a normal sample: n 10, mean 90, s 5.2 gives 77.75587 (manual of cmstatr).
it('gives the B-basis of the example', () => {
  const { n, mean, s, kB, B_basis } = examples.basis_example;
  expect(toleranceFactor(n, 0.9, 0.95)).toBeCloseTo(kB, 8);
  expect(mean - toleranceFactor(n, 0.9, 0.95) * s).toBeCloseTo(B_basis, 8);
});

// ASTM E691, serum glucose in eight laboratories, as carried by the statistics package ILS. B and C differ from the final
// table of the standard, where clerical errors had been mended; A, D and E are the same in both.
describe('precision study of ASTM E691', () => {
  const cellsOf = (material: string) => {
    const cells = new Map<string, number[]>();
    for (const row of readTable('e691-glucose.csv').filter((each) => each['material'] === material)) {
      cells.set(row['lab']!, [...(cells.get(row['lab']!) ?? []), Number(row['value'])]);
    }
    return [...cells.values()];
  };

  it.each(readTable('e691-expected.csv'))('material $material', (row) => {
    const study = studyPrecision(cellsOf(row['material']!));
    const same = (found: number, column: string, decimals: number) =>
      expect(found).toBeCloseTo(Number(row[column]), decimals);
    same(study.mean, 'mean', 5);
    same(study.sdOfMeans, 's_xbar', 6);
    same(study.repeatabilitySd, 's_r', 6);
    same(study.reproducibilitySdRaw, 's_R_unclamped', 6);
    same(study.reproducibilitySd, 's_R_E691_clamped_to_s_r', 6);
    same(study.repeatabilityLimit, 'r_2.8', 4);
    same(study.reproducibilityLimit, 'R_2.8', 4);
    const furthest = study.h.reduce((far, each) => (Math.abs(each) > Math.abs(far) ? each : far), 0);
    same(furthest, 'max_abs_h', 3);
    same(Math.max(...study.k), 'max_k', 3);
  });

  it.each(['A', 'D', 'E'])('material %s agrees with the final table of the standard', (material) => {
    const row = readTable('e691-expected.csv').find((each) => each['material'] === material)!;
    const study = studyPrecision(cellsOf(material));
    expect(Math.abs(study.mean - Number(row['E691_table_mean']))).toBeLessThan(0.0006);
    expect(study.repeatabilitySd).toBeCloseTo(Number(row['E691_table_s_r']), 3);
    expect(study.reproducibilitySd).toBeCloseTo(Number(row['E691_table_s_R']), 3);
  });
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

  it('finds the F between batches of Rp0.2', () => {
    const groups = [...new Set(results.map(({ batch }) => batch))].map((batch) =>
      results.filter((row) => row['batch'] === batch).map((row) => Number(row['Rp02_MPa'])),
    );
    const { f, pValue } = oneWayAnova(groups);
    expect(f / 458.3174456661588).toBeCloseTo(1, 6);
    expect(pValue / 2.8022330176199555e-45).toBeCloseTo(1, 4);
  });
});
