import { ITEM_KINDS } from '#libs/matching/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import type { DecimalMark } from '#libs/units/src/index.js';
import { CsvError, parse } from 'csv-parse/sync';
import { readCell, unsafe } from './csv-cell.js';
import { allColumns, columnsOf } from './csv-columns.js';

export interface CsvProblem {
  line: number;
  field: string;
  sentence: string;
}

/** One line of the file: its kind and tag, and what it says at each path; null clears what was there. */
export interface CsvItem {
  line: number;
  kind: ItemKind;
  tag: string;
  said: ReadonlyMap<string, unknown>;
}

interface Parsed {
  record: string[];
  info: { lines: number };
}

const MOST_LINES = 5_000;

/** Reads a file of items; delimiter and decimal mark are taken from its head. Nothing is guessed within a line. */
export function readItemsCsv(text: string): { items: CsvItem[]; problems: CsvProblem[] } {
  const head = text.slice(0, text.search(/[\r\n]|$/));
  const delimiter = [';', '\t', ','].find((each) => head.includes(each)) ?? ',';
  const rows = rowsOf(text, delimiter);
  if (!Array.isArray(rows)) return { items: [], problems: [rows] };
  const [header, ...lines] = rows;
  if (!header) return { items: [], problems: [{ line: 1, field: '', sentence: 'The file is empty.' }] };
  const columns = header.record.map((name) => name.trim());
  const problems = headerProblems(columns, lines.length);
  if (problems.length > 0) return { items: [], problems };
  const read = lines.map((row) => readLine(row, columns, delimiter === ';' ? ',' : '.'));
  const items = read.flatMap(({ item }) => (item ? [item] : []));
  return { items, problems: [...read.flatMap((each) => each.problems), ...twice(items)] };
}

function rowsOf(text: string, delimiter: string): Parsed[] | CsvProblem {
  try {
    const options = { bom: true, delimiter, info: true, skip_empty_lines: true, trim: true, max_record_size: 100_000 };
    return parse(text, options) as unknown as Parsed[];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = (error as CsvError & { lines?: number }).lines ?? 1;
    return {
      line,
      field: '',
      sentence: 'This line cannot be read: it has too many or too few cells, or a quote that does not end.',
    };
  }
}

function headerProblems(columns: readonly string[], lines: number): CsvProblem[] {
  const known = new Set(['kind', ...allColumns().map(({ path }) => path)]);
  const at = (field: string, sentence: string): CsvProblem => ({ line: 1, field, sentence });
  return [
    ...['kind', 'tag']
      .filter((name) => !columns.includes(name))
      .map((name) => at(name, `The column ${name} is missing.`)),
    ...columns
      .filter((name) => !known.has(name))
      .map((name) => at(name.slice(0, 80), 'There is no such column; export the register to see them all.')),
    ...columns
      .filter((name, index) => columns.indexOf(name) < index)
      .map((name) => at(name, 'This column is there twice.')),
    ...(lines > MOST_LINES ? [at('', `The file has ${lines} lines; ${MOST_LINES} are taken at a time.`)] : []),
  ];
}

function readLine({ record, info }: Parsed, columns: readonly string[], mark: DecimalMark) {
  const line = info.lines;
  const cell = (name: string) => unsafe(record[columns.indexOf(name)] ?? '').trim();
  const [kind, tag] = [cell('kind'), cell('tag')];
  if (!ITEM_KINDS.some((known) => known === kind)) {
    return {
      item: null,
      problems: [
        { line, field: 'kind', sentence: `"${kind}" is no kind; allowed is one of ${ITEM_KINDS.join(', ')}.` },
      ],
    };
  }
  if (!tag) return { item: null, problems: [{ line, field: 'tag', sentence: 'The tag is missing.' }] };
  const said = new Map<string, unknown>();
  const own = new Map(columnsOf(kind as ItemKind).map((column) => [column.path, column]));
  const problems = columns.flatMap((name, index): CsvProblem[] => {
    const text = (record[index] ?? '').trim();
    const column = own.get(name);
    if (!column) return name === 'kind' || !text ? [] : [{ line, field: name, sentence: `A ${kind} has no ${name}.` }];
    const read = text ? readCell(column.type, text, mark) : { value: null };
    if ('reason' in read) return [{ line, field: name, sentence: read.reason }];
    said.set(name, read.value);
    return [];
  });
  return { item: { line, kind: kind as ItemKind, tag, said }, problems };
}

function twice(items: readonly CsvItem[]): CsvProblem[] {
  const first = new Map<string, number>();
  return items.flatMap(({ tag, line }) => {
    const before = first.get(tag);
    if (before === undefined) first.set(tag, line);
    return before === undefined ? [] : [{ line, field: 'tag', sentence: `${tag} is there before, on line ${before}.` }];
  });
}
