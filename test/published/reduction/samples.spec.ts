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
import { checkData, maybe, withoutData } from '#test/support/maybe.js';

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

// Published Rp0.2, Rm and others of all 67 tests of 42CrMoS4 (CC BY 4.0, see curves-42crmos4.spec.ts); figures recomputed
// with SciPy.
describe('statistics over the 67 published results of 42CrMoS4', () => {
  const FILES = 'checks/curves/42CrMoS4-results.csv';
  const results = checkData(FILES);
  const figures = checkData('checks/curves/42CrMoS4-statistics.json');
  const both = maybe(withoutData(FILES, results && figures));

  const table = () => {
    const [heading, ...lines] = readFileSync(results!, 'utf8').trim().split('\n');
    const names = heading!.split(',');
    return lines.map((line) => Object.fromEntries(line.split(',').map((cell, at) => [names[at]!, cell])));
  };
  const COLUMNS: Record<string, string> = {
    Rp02: 'Rp02_MPa',
    Rp1: 'Rp1_MPa',
    Rm: 'Rm_MPa',
    Ag: 'Ag_percent',
    A: 'A_percent',
    Z: 'Z_percent',
    slope: 'slope_MPa',
  };
  const columnOf = (name: string) => COLUMNS[name] ?? name;

  both('agrees in n, mean, standard deviation, Grubbs, interval and B-basis', () => {
    const stated = JSON.parse(readFileSync(figures!, 'utf8')) as Record<
      string,
      {
        n: number;
        mean: number;
        sd: number;
        grubbs_G: number;
        grubbs_crit_two_sided_0_05: number;
        suspect: string;
        outlier: boolean;
        ci95: [number, number];
        b_basis_normal: number;
      }
    >;
    for (const [name, answer] of Object.entries(stated)) {
      const [quantity, batch] = name.split('|');
      const rows = table().filter((row) => (batch === 'all' || row['batch'] === batch) && row[columnOf(quantity!)]);
      const values = rows.map((row) => Number(row[columnOf(quantity!)]));
      const sample = describeSample(values);
      const grubbs = testGrubbs(values)!;
      const near = (found: number, expected: number) =>
        expect(Math.abs(found - expected)).toBeLessThan(2e-5 * Math.max(1, Math.abs(expected)));
      expect(sample.n).toBe(answer.n);
      near(sample.mean, answer.mean);
      near(sample.sd!, answer.sd);
      near(grubbs.g, answer.grubbs_G);
      near(grubbs.critical, answer.grubbs_crit_two_sided_0_05);
      expect([rows[grubbs.suspectIndex]!['specimen'], grubbs.isPossibleOutlier]).toEqual([
        answer.suspect,
        answer.outlier,
      ]);
      near(sample.meanInterval!.from, answer.ci95[0]);
      near(sample.meanInterval!.to, answer.ci95[1]);
      near(toleranceBound(values, 0.9, 0.95)!.bound, answer.b_basis_normal);
    }
  });

  both('finds the F between batches of Rp0.2', () => {
    const { Rp02_between_batches: answer } = JSON.parse(
      readFileSync(checkData('checks/curves/42CrMoS4-anova.json')!, 'utf8'),
    );
    const rows = table();
    const groups = [...new Set(rows.map((row) => row['batch']))].map((batch) =>
      rows.filter((row) => row['batch'] === batch).map((row) => Number(row['Rp02_MPa'])),
    );
    const { f, pValue } = oneWayAnova(groups);
    expect(f / answer.F).toBeCloseTo(1, 6);
    expect(pValue / answer.p).toBeCloseTo(1, 4);
  });
});
