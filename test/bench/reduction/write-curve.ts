import { closeSync, openSync, writeSync } from 'node:fs';

const LINES_PER_WRITE = 5000;

/**
 * Writes a tension curve as a recorder of German settings would (semicolons, decimal commas): straight to 1 % strain,
 * then bending over, with a little ripple so that no two lines are alike.
 *
 * @returns size of the file in bytes
 */
export function writeCurve(file: string, rows: number): number {
  const handle = openSync(file, 'w');
  let bytes = writeSync(handle, 'Prüfung;Rohr 28,6\nZeit;Kraft;Verlängerung;Traversenweg\n[s];[N];[mm];[mm]\n');
  for (let first = 0; first < rows; first += LINES_PER_WRITE) {
    const lines: string[] = [];
    for (let row = first; row < Math.min(rows, first + LINES_PER_WRITE); row++) lines.push(lineOf(row, rows));
    bytes += writeSync(handle, lines.join(''));
  }
  closeSync(handle);
  return bytes;
}

function lineOf(row: number, rows: number): string {
  const strain = (0.1 * row) / rows;
  const forceN = 40_000 * (1 - Math.exp(-strain * 60)) + 0.5 * Math.sin(row);
  const cells = [(row * 0.001).toFixed(3), forceN.toFixed(4), (strain * 50).toFixed(6), (strain * 80).toFixed(5)];
  return `${cells.join(';').replaceAll('.', ',')}\n`;
}
