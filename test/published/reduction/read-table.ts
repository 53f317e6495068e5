import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** Rows of a table beside the specs, as text by heading. */
export function readTable(name: string): Record<string, string>[] {
  return parse(readFileSync(new URL(`./${name}`, import.meta.url)), { columns: true });
}

/** The rows of numbers of a NIST data file: what stands below its last line `Data:`. */
export function readNist(name: string): number[][] {
  const text = readFileSync(new URL(`./nist-strd/${name}`, import.meta.url), 'utf8');
  const lines = text.slice(text.lastIndexOf('\nData:')).split(/\r?\n/);
  return lines
    .filter((line) => /^[-+\d.\sEe]*\d[-+\d.\sEe]*$/.test(line))
    .map((line) => line.trim().split(/\s+/).map(Number));
}
