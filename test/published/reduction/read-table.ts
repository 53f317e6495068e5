import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** Rows of a table beside the specs, as text by heading. */
export function readTable(name: string): Record<string, string>[] {
  return parse(readFileSync(new URL(`./${name}`, import.meta.url)), { columns: true });
}

/** Text of a NIST data file, and the rows of numbers below its heading. */
export function readNist(name: string): { text: string; rows: number[][] } {
  const text = readFileSync(new URL(`./nist-strd/${name}`, import.meta.url), 'utf8');
  const data = text.slice(text.search(/^Data:\s*(?=Y|y|$)|^Data:\s*\n|^Data:\s+Instrument/m));
  const rows = data
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length > 0 && row.every((value) => Number.isFinite(value)));
  return { text, rows: rows.filter((row) => row.length > 0 && !(row.length === 1 && Number.isNaN(row[0]!))) };
}
