import { readFileSync } from 'node:fs';
import { describeSample, fitLine, lagOneCorrelation } from '#libs/reduction/src/index.js';
import { readNist, readTable } from '#test/published/reduction/read-table.js';

// NIST Statistical Reference Datasets (public domain), certified to 15 digits: https://www.itl.nist.gov/div898/strd/
// Univariate, and linear regression (Norris).

/** How many digits two numbers share, as NIST scores it: −log10 of the relative error, 15 where they are equal. */
function digits(found: number, certified: number): number {
  return found === certified ? 15 : Math.min(15, -Math.log10(Math.abs(found / certified - 1)));
}

/** Double precision leaves this much of the two hardest sets; anything else keeps 13 digits. */
const DIGITS_OF_SD: Record<string, number> = { NumAcc3: 9, NumAcc4: 8 };
const DIGITS_OF_LAG: Record<string, number> = { NumAcc3: 8, NumAcc4: 7 };

function valuesOf(file: string): number[] {
  if (file.endsWith('.dat')) return readNist(file.replace('nist-strd/', '')).flat();
  const typed = readFileSync(new URL(`./${file}`, import.meta.url), 'utf8').replace(/\D/g, '');
  // The certified file has 3 as its 957th digit, where π has 8.
  return [...typed.slice(0, 956), '3', ...typed.slice(957, 5000)].map(Number);
}

describe('sample figures against NIST StRD', () => {
  it.each(readTable('nist-strd.csv'))('keeps the digits of $dataset ($n values)', (row) => {
    const { dataset = '', n, certified_mean, file = '' } = row;
    const values = valuesOf(file);
    const figures = describeSample(values);
    expect(figures.n).toBe(Number(n));
    expect(digits(figures.mean, Number(certified_mean))).toBeGreaterThanOrEqual(14);
    expect(digits(figures.sd!, Number(row['certified_sd_n-1']))).toBeGreaterThanOrEqual(DIGITS_OF_SD[dataset] ?? 13);
    expect(digits(lagOneCorrelation(values), Number(row['certified_lag1_autocorrelation']))).toBeGreaterThanOrEqual(
      DIGITS_OF_LAG[dataset] ?? 12,
    );
  });
});

describe('regression against NIST StRD', () => {
  const certified = readTable('nist-regression.csv');
  const pairsOf = (dataset: string) => {
    const rows = readNist(`${dataset}.dat`);
    return { x: rows.map((row) => row[1]!), y: rows.map((row) => row[0]!) };
  };
  const answer = (dataset: string, parameter: string) =>
    certified.find((row) => row['dataset'] === dataset && row['parameter'] === parameter)!;
  const same = (found: number, stated: string | undefined, atLeast: number) =>
    expect(digits(found, Number(stated))).toBeGreaterThanOrEqual(atLeast);

  it('fits the line of Norris to 12 digits', () => {
    const { x, y } = pairsOf('Norris');
    const line = fitLine(x, y);
    const [b0, b1] = [answer('Norris', 'B0'), answer('Norris', 'B1')];
    same(line.slope, b1['certified_estimate'], 12);
    same(line.intercept, b0['certified_estimate'], 12);
    same(line.slopeSd, b1['certified_sd_of_estimate'], 12);
    same(line.interceptSd, b0['certified_sd_of_estimate'], 12);
    same(line.residualSd, b1['residual_sd'], 12);
    same(line.rSquared, b1['r_squared'], 12);
  });
});
