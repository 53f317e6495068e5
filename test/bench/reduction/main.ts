import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeCurve } from '#test/bench/reduction/write-curve.js';

// Reads and reduces curves of 10⁴ to 10⁷ rows, beside the plain read-all-and-split way in the same run. Each run is a
// process of its own; growth is its peak memory less what it held before the file. Best of three up to 10⁶ rows.
// node apps/tooling/run-ts.mjs test/bench/reduction/main.ts [largest power of ten]
const LARGEST = Number(process.argv[2] ?? 7);
/** The bar: one million rows within this time and growth. */
const BAR = { rows: 1e6, totalMs: 1500, growthMb: 200 };
/** A curve is held once: its four columns and its two axes, eight bytes each. What is needed beside it does not grow with it. */
const CURVE_BYTES_PER_ROW = 48;
const MOST_BESIDE_MB = 120;
/** Time per row may not rise by more than this from 10⁶ rows on, where starting up no longer counts. */
const MOST_RISE = 2;

interface Run {
  rows: number;
  readMs: number;
  totalMs: number;
  growthMb: number;
  values: number[];
}

const ONE_RUN = fileURLToPath(new URL('./one-run.js', import.meta.url));

function run(way: 'streamed' | 'split', file: string, times: number): Run | null {
  let best: Run | null = null;
  for (let time = 0; time < times; time++) {
    const { status, stdout } = spawnSync(process.execPath, [ONE_RUN, way, file], { encoding: 'utf8' });
    if (status !== 0) return null;
    const result = JSON.parse(stdout) as Run;
    if (!best || result.totalMs < best.totalMs) best = result;
  }
  return best;
}

function line(rows: number, way: string, result: Run | null): string {
  if (!result) return `${String(rows).padStart(9)}  ${way.padEnd(9)} did not finish (out of memory)`;
  const cells = [
    result.readMs.toFixed(0),
    result.totalMs.toFixed(0),
    ((result.totalMs * 1000) / result.rows).toFixed(3),
    result.growthMb.toFixed(0),
  ];
  return `${String(rows).padStart(9)}  ${way.padEnd(9)}${cells.map((cell) => cell.padStart(11)).join('')}`;
}

const folder = mkdtempSync(join(tmpdir(), 'curves-'));
const failures: string[] = [];
const perRowUs = new Map<number, number>();
console.log('     rows  way           read ms   total ms     µs/row  growth MB');
try {
  for (let power = 4; power <= LARGEST; power++) {
    const rows = 10 ** power;
    const file = join(folder, `${rows}.csv`);
    writeCurve(file, rows);
    const times = power <= 6 ? 3 : 1;
    const ours = run('streamed', file, times);
    const plain = run('split', file, times);
    console.log(line(rows, 'streamed', ours));
    console.log(line(rows, 'split', plain));
    if (!ours || ours.rows !== rows) failures.push(`${rows} rows were not read`);
    if (ours && plain && ours.values.join() !== plain.values.join())
      failures.push(`${rows} rows gave other results than the plain way`);
    if (ours && rows === BAR.rows && (ours.totalMs > BAR.totalMs || ours.growthMb > BAR.growthMb))
      failures.push('the bar for a million rows is missed');
    if (ours && ours.growthMb - (rows * CURVE_BYTES_PER_ROW) / 1e6 > MOST_BESIDE_MB)
      failures.push(`${rows} rows took more than ${MOST_BESIDE_MB} MB beside the curve itself`);
    if (ours) perRowUs.set(rows, (ours.totalMs * 1000) / rows);
    rmSync(file);
  }
} finally {
  rmSync(folder, { recursive: true });
}
const rates = [...perRowUs].filter(([rows]) => rows >= 1e6).map(([, us]) => us);
if (rates.at(-1)! > MOST_RISE * rates[0]!) failures.push('time per row rises with the length of the curve');
for (const failure of failures) console.error(`FAILED: ${failure}`);
process.exitCode = failures.length > 0 ? 1 : 0;
