import { ITEM_KINDS } from '#libs/matching/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { readCell } from '../exchange/csv-cell.js';
import { readTable } from '../exchange/csv-table.js';
import type { CsvProblem, CsvRow, CsvTable } from '../exchange/csv-table.js';
import { allColumns, columnsOf } from './csv-columns.js';
import { emptyOf } from './item-columns.js';

/** One line of the file: its kind and tag, and what it says at each path; null or an empty list clears what was there. */
export interface CsvItem {
  line: number;
  kind: ItemKind;
  tag: string;
  said: ReadonlyMap<string, unknown>;
}

/** Reads a file of items. */
export function readItemsCsv(text: string): { items: CsvItem[]; problems: CsvProblem[] } {
  const table = readTable(text, { needed: ['kind', 'tag'], known: ['kind', ...allColumns().map(({ path }) => path)] });
  const read = table.rows.map((row) => readLine(row, table));
  const items = read.flatMap(({ item }) => (item ? [item] : []));
  return { items, problems: [...table.problems, ...read.flatMap(({ problems }) => problems), ...twice(items)] };
}

function readLine(
  { line, cell }: CsvRow,
  { columns, mark }: CsvTable,
): { item: CsvItem | null; problems: CsvProblem[] } {
  const wrong = (field: string, sentence: string): CsvProblem => ({ line, field, sentence });
  const [kind, tag] = [cell('kind'), cell('tag')];
  if (!isKind(kind)) {
    const sentence = `"${kind}" is no kind; allowed is one of ${ITEM_KINDS.join(', ')}.`;
    return { item: null, problems: [wrong('kind', sentence)] };
  }
  if (!tag) return { item: null, problems: [wrong('tag', 'The tag is missing.')] };
  const said = new Map<string, unknown>();
  const own = new Map(columnsOf(kind).map((column) => [column.path, column]));
  const problems = columns.flatMap((name): CsvProblem[] => {
    const [text, column] = [cell(name), own.get(name)];
    if (!column) return name === 'kind' || !text ? [] : [wrong(name, `A ${kind} has no ${name}.`)];
    const read = text ? readCell(column.type, text, mark) : { value: emptyOf(column.type) };
    if ('reason' in read) return [wrong(name, read.reason)];
    said.set(name, read.value);
    return [];
  });
  return { item: { line, kind, tag, said }, problems };
}

function isKind(text: string): text is ItemKind {
  return ITEM_KINDS.some((known) => known === text);
}

function twice(items: readonly CsvItem[]): CsvProblem[] {
  const first = new Map<string, number>();
  return items.flatMap(({ tag, line }) => {
    const before = first.get(tag);
    if (before === undefined) first.set(tag, line);
    return before === undefined ? [] : [{ line, field: 'tag', sentence: `${tag} is there before, on line ${before}.` }];
  });
}
