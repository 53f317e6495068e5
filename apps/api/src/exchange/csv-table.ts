import type { DecimalMark } from '#libs/units/src/index.js';
import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { unsafe } from './csv-cell.js';

export interface CsvProblem {
  line: number;
  field: string;
  sentence: string;
}

export interface CsvRow {
  line: number;
  /** What stands in a column, without blanks around it; empty for a column that the file does not have. */
  cell(name: string): string;
}

export interface CsvTable {
  columns: readonly string[];
  /** A file with semicolons comes from where the comma is the decimal mark. */
  mark: DecimalMark;
  rows: readonly CsvRow[];
  problems: readonly CsvProblem[];
}

interface Columns {
  needed: readonly string[];
  known: readonly string[];
}

interface Parsed {
  record: string[];
  /** Where it ends. */
  line: number;
}

const MOST_LINES = 5_000;

/** Reads a delimited text with a header line; delimiter and decimal mark are taken from the header, nothing else is guessed. */
export function readTable(text: string, expected: Columns): CsvTable {
  const head = text.slice(0, text.search(/[\r\n]|$/));
  const delimiter = [';', '\t', ','].find((each) => head.includes(each)) ?? ',';
  const mark = delimiter === ';' ? ',' : '.';
  const bad = (problems: readonly CsvProblem[]): CsvTable => ({ columns: [], mark, rows: [], problems });
  const rows = rowsOf(text, delimiter);
  if (!Array.isArray(rows)) return bad([rows]);
  const [header, ...lines] = rows;
  if (!header) return bad([{ line: 1, field: '', sentence: 'The file is empty.' }]);
  const columns = header.record.map((name) => name.trim());
  const problems = headerProblems(columns, lines.length, expected);
  if (problems.length > 0) return bad(problems);
  const cellOf = (record: string[]) => (name: string) => unsafe(record[columns.indexOf(name)] ?? '').trim();
  const isWhole = ({ record }: Parsed) => record.length === columns.length;
  return {
    columns,
    mark,
    rows: lines.filter(isWhole).map(({ record, line }) => ({ line, cell: cellOf(record) })),
    problems: lines
      .filter((each) => !isWhole(each))
      .map(({ record, line }) => ({
        ...{ line, field: '' },
        sentence: `This line has ${record.length} cells; the header has ${columns.length}.`,
      })),
  };
}

/** A file in the form that `readTable` takes. */
export function writeTable(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  // RFC 4180 2.6: a line end of either kind is quoted, not only the one that ends the records.
  return stringify([columns, ...rows], { record_delimiter: '\r\n', quoted_match: /[\r\n]/ });
}

/** A cell that cannot be read is told once, and not also as missing; by line. */
export function oncePerField(problems: readonly CsvProblem[]): CsvProblem[] {
  const first = new Map<string, CsvProblem>();
  for (const problem of problems) {
    const key = `${problem.line} ${problem.field}`;
    if (!first.has(key)) first.set(key, problem);
  }
  return [...first.values()].sort((a, b) => a.line - b.line);
}

function rowsOf(text: string, delimiter: string): Parsed[] | CsvProblem {
  try {
    const rows: Parsed[] = [];
    const options = { bom: true, delimiter, skip_empty_lines: true, trim: true, relax_column_count: true };
    parse(text, {
      ...{ ...options, max_record_size: 100_000 },
      on_record: (record: string[], { lines }) => {
        rows.push({ record, line: lines });
        return null;
      },
    });
    return rows;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = (error as CsvError & { lines?: number }).lines ?? 1;
    const sentence = 'From this line on the file cannot be read: a quote does not end, or a line is far too long.';
    return { line, field: '', sentence };
  }
}

function headerProblems(columns: readonly string[], lines: number, { needed, known }: Columns): CsvProblem[] {
  const at = (field: string, sentence: string): CsvProblem => ({ line: 1, field: field.slice(0, 80), sentence });
  const missing = needed.filter((name) => !columns.includes(name));
  const strange = columns.filter((name) => !known.includes(name));
  const twice = columns.filter((name, index) => columns.indexOf(name) < index);
  return [
    ...missing.map((name) => at(name, `The column ${name} is missing.`)),
    ...strange.map((name) => at(name, 'There is no such column; an export shows them all.')),
    ...twice.map((name) => at(name, 'This column is there twice.')),
    ...(lines > MOST_LINES ? [at('', `The file has ${lines} lines; ${MOST_LINES} are taken at a time.`)] : []),
  ];
}
