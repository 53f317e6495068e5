import jstat from 'jstat';
import {
  grubbsCritical,
  noncentralTCdf,
  normalCdf,
  normalQuantile,
  studentCdf,
  studentQuantile,
  toleranceFactor,
} from '#libs/reduction/src/index.js';
import { readTable } from '#test/published/reduction/read-table.js';

/** Tables are printed to four decimals. */
const FOUR_DECIMALS = 0.5001e-4;

// JCGM 100:2008 (GUM), table G.2; the last row is the normal distribution.
describe("Student's t", () => {
  const columns: [string, number][] = [
    ['two_sided_68.27_percent', (1 + 0.6827) / 2],
    ['two_sided_90_percent', 0.95],
    ['two_sided_95_percent', 0.975],
    ['two_sided_95.45_percent', (1 + 0.9545) / 2],
    ['two_sided_99_percent', 0.995],
    ['two_sided_99.73_percent', (1 + 0.9973) / 2],
    ['one_sided_95_percent', 0.95],
    ['one_sided_99_percent', 0.99],
  ];

  it.each(readTable('t-quantiles.csv'))('has the quantiles of table G.2 for $nu degrees of freedom', (row) => {
    for (const [column, p] of columns) {
      const t = row['nu'] === 'inf' ? normalQuantile(p) : studentQuantile(p, Number(row['nu']));
      // The row of 68.27 % is kept for 68.26895 % (one sigma) by some printings: both round within 0.0002.
      expect(Math.abs(t - Number(row[column]))).toBeLessThan(
        /68|\.45|\.73/.test(column) ? 1e-3 * Number(row[column]) : FOUR_DECIMALS,
      );
    }
  });
});

// One-sided: ASTM E178 table 1 (from memory). Two-sided 5 %: CMH-17-1G table 8.5.7, as quoted in the tests of the
// statistics package cmstatr. All: NIST/SEMATECH e-Handbook 1.3.5.17.1.
describe("Grubbs' critical values", () => {
  it.each(readTable('grubbs.csv'))('agree for n = $n', (row) => {
    const n = Number(row['n']);
    const near = (found: number, column: string, within: number) => {
      if (row[column]) expect(Math.abs(found - Number(row[column]))).toBeLessThan(within);
    };
    near(grubbsCritical(n, 0.05, 'highest'), 'one_sided_0.05', FOUR_DECIMALS);
    near(grubbsCritical(n, 0.01, 'lowest'), 'one_sided_0.01', FOUR_DECIMALS);
    near(grubbsCritical(n, 0.05, 'either'), 'two_sided_0.05', FOUR_DECIMALS);
    near(grubbsCritical(n, 0.01, 'either'), 'two_sided_0.01', FOUR_DECIMALS);
    near(grubbsCritical(n, 0.05, 'highest'), 'published_one_sided_0.05', 0.001);
    near(grubbsCritical(n, 0.01, 'highest'), 'published_one_sided_0.01', 0.001);
    near(grubbsCritical(n, 0.05, 'either'), 'published_two_sided_0.05_CMH17', 0.0006);
  });
});

// ISO 16269-6 one-sided with unknown standard deviation; CMH-17-1G kB and kA, as quoted in the tests of cmstatr.
describe('tolerance factors', () => {
  it.each(readTable('k-factors.csv'))('agree for n = $n', (row) => {
    const n = Number(row['n']);
    const found = { kB: toleranceFactor(n, 0.9, 0.95), kA: toleranceFactor(n, 0.99, 0.95) };
    expect(Math.abs(found.kB - Number(row['kB_p90_conf95']))).toBeLessThan(FOUR_DECIMALS);
    expect(Math.abs(found.kA - Number(row['kA_p99_conf95']))).toBeLessThan(FOUR_DECIMALS);
    expect(Math.abs(toleranceFactor(n, 0.95, 0.95) - Number(row['k_p95_conf95']))).toBeLessThan(FOUR_DECIMALS);
    if (row['published_kB_CMH17']) expect(Math.abs(found.kB - Number(row['published_kB_CMH17']))).toBeLessThan(0.002);
    if (row['published_kA_CMH17']) expect(Math.abs(found.kA - Number(row['published_kA_CMH17']))).toBeLessThan(0.001);
  });
});

// A peer library, jstat 1.9.6 (MIT), for the distributions themselves; it keeps about eight digits of Student's t.
describe('distributions beside jstat', () => {
  it.each([-4.5, -3.01, -2.99, -1, -0.1, 0, 0.3, 1.96, 3, 3.5, 5])('normal at %d', (z) => {
    expect(normalCdf(z)).toBeCloseTo(jstat.normal.cdf(z, 0, 1), 8);
  });

  it.each([1, 2, 5, 12.7, 60, 1000])("Student's t with %d degrees of freedom", (nu) => {
    for (const t of [-6, -1, 0, 0.4, 2.5]) expect(studentCdf(t, nu)).toBeCloseTo(jstat.studentt.cdf(t, nu), 7);
  });

  it.each([
    [3, 2],
    [9, 4.05],
    [29, 7.02],
    [100, 16],
  ])('noncentral t with %d degrees of freedom and noncentrality %d', (nu, delta) => {
    for (const shift of [-2, -0.5, 0, 1, 3]) {
      expect(noncentralTCdf(delta + shift, nu, delta)).toBeCloseTo(jstat.noncentralt.cdf(delta + shift, nu, delta), 7);
    }
  });
});
