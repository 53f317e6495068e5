import { createReadStream, readFileSync } from 'node:fs';
import { createCurveReader, reduceCurve } from '#libs/reduction/src/index.js';
import type { Curve, ReductionRecipe } from '#libs/reduction/src/index.js';

// One way of reading, once, in a process of its own, so that its memory is its own: node one-run.js WAY FILE
const RECIPE: ReductionRecipe = {
  kind: 'tension',
  section: 'round',
  results: ['peak-load', 'peak-stress', 'modulus', 'offset-yield', 'strain-at-break', 'energy-to-break', 'upper-yield'],
  slope: { way: 'regression', bounds: { over: 'peak-share', from: 0.1, to: 0.4 } },
  toe: { way: 'slope-line' },
  break: { way: 'load-drop', share: 0.5 },
  offsetStrains: [0.002],
};
const DIMENSIONS = { diameterMm: 10, gaugeLengthMm: 50 };

async function streamed(file: string): Promise<Curve> {
  const reader = createCurveReader();
  for await (const chunk of createReadStream(file, { highWaterMark: 256 * 1024 })) reader.push(chunk as Buffer);
  const reading = reader.end();
  if (reading.state === 'refused') throw new Error(JSON.stringify(reading.problems));
  return reading.curve;
}

/** The plain way: the whole file as text, split into lines, split into cells. */
function split(file: string): Curve {
  const [, , , ...lines] = readFileSync(file, 'utf8').trimEnd().split('\n');
  const rows = lines.map((line) => line.split(';').map((cell) => Number(cell.replace(',', '.'))));
  const column = (at: number) => Float64Array.from(rows, (row) => row[at]!);
  return {
    pointCount: rows.length,
    timeS: column(0),
    forceN: column(1),
    extensionMm: column(2),
    displacementMm: column(3),
  };
}

const [way = '', file = ''] = process.argv.slice(2);
const startBytes = process.memoryUsage().rss;
const startMs = performance.now();
const curve = way === 'streamed' ? await streamed(file) : split(file);
const readMs = performance.now() - startMs;
const outcome = reduceCurve(curve, RECIPE, DIMENSIONS);
const totalMs = performance.now() - startMs;
const growthMb = (process.resourceUsage().maxRSS * 1024 - startBytes) / 1e6;
const values = outcome.state === 'reduced' ? outcome.results.map(({ value }) => value) : [];
console.log(JSON.stringify({ rows: curve.pointCount, readMs, totalMs, growthMb, values }));
