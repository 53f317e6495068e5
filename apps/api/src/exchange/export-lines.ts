import { safe } from './csv-cell.js';
import { writeTable } from './csv-table.js';

/** A row of a table out of the database. */
export interface ExportedRow {
  table: string;
  /** The row as JSON. */
  line: string;
}

/** Rows as lines of JSON, each with its table before it. */
export async function* jsonLines(rows: AsyncIterable<ExportedRow>): AsyncGenerator<string> {
  for await (const { table, line } of rows) yield `{"table":${JSON.stringify(table)},"row":${line}}\n`;
}

/** Rows of one table as CSV with a header; what is no plain value is JSON in its cell. No cell begins a formula. */
export async function* csvLines(columns: readonly string[], rows: AsyncIterable<ExportedRow>): AsyncGenerator<string> {
  yield writeTable(columns, []);
  for await (const { line } of rows) {
    const row = JSON.parse(line) as Record<string, unknown>;
    yield writeTable(
      columns.map((column) => cellOf(row[column])),
      [],
    );
  }
}

/** A number cannot begin a formula, whatever its sign; text is marked where it would. */
export function cellOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return safe(typeof value === 'string' ? value : JSON.stringify(value));
}
