import type { BatchBody, SaveRequestBody, TeamRef } from '#libs/contract/src/index.js';
import { methodOf } from '#libs/records/src/index.js';
import type { MaterialEntity, MethodEntity } from '#libs/records/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import { plainToInstance } from 'class-transformer';
import { validateSync } from 'class-validator';
import { readCell } from '../exchange/csv-cell.js';
import { readTable } from '../exchange/csv-table.js';
import type { CsvProblem, CsvRow, CsvTable } from '../exchange/csv-table.js';
import { put } from '../exchange/paths.js';
import { problemsOf } from '../platform/validation.js';
import { allAskColumns, askColumns, BATCH_COLUMNS, REQUEST_COLUMNS } from './request-csv.js';
import { SaveRequestDto } from './request.dto.js';

/** What the words of a file mean in this lab. */
export interface Known {
  methods: readonly MethodEntity[];
  materials: readonly MaterialEntity[];
  teams: readonly TeamRef[];
}

/** A request of the file, with the line on which each batch stands. */
export interface CsvRequest {
  lines: number[];
  body: SaveRequestBody;
}

/** Reads a file of requests: lines that name the same request are its batches. */
export function readRequestsCsv(text: string, known: Known): { requests: CsvRequest[]; problems: CsvProblem[] } {
  const asks = allAskColumns(known.methods.map(methodOf)).map(({ path }) => path);
  const needed = ['request', 'title', 'team', 'method', 'specimens'];
  const table = readTable(text, { needed, known: [...REQUEST_COLUMNS, ...BATCH_COLUMNS, ...asks] });
  const groups = new Map<string, CsvRow[]>();
  for (const row of table.rows) groups.set(row.cell('request'), [...(groups.get(row.cell('request')) ?? []), row]);
  const read = [...groups.values()].map((rows) => readRequest(rows, table, known));
  return {
    requests: read.map(({ request }) => request),
    problems: [...table.problems, ...read.flatMap(({ problems }) => problems)],
  };
}

function readRequest(
  rows: readonly CsvRow[],
  table: CsvTable,
  known: Known,
): { request: CsvRequest; problems: CsvProblem[] } {
  const first = rows[0]!;
  const team = known.teams.find(({ name }) => name === first.cell('team'));
  const batches = rows.map((row) => readBatch(row, table, known));
  const body = {
    ...{ title: first.cell('title'), purpose: first.cell('purpose'), teamId: team?.id ?? '' },
    ...{ dueAt: first.cell('dueAt') || null, specimensAt: first.cell('specimensAt') || null },
    ...{ weight: figure(first.cell('weight') || '1', table), disposal: first.cell('disposal') || 'keep-90-days' },
    batches: batches.map(({ batch }) => batch),
  } as SaveRequestBody;
  const strange = team
    ? []
    : [{ line: first.line, field: 'team', sentence: `"${first.cell('team')}" is no team of the lab.` }];
  const problems = [
    ...strange,
    ...disagreeing(rows),
    ...batches.flatMap((each) => each.problems),
    ...shapeOf(body, rows),
  ];
  return { request: { lines: rows.map(({ line }) => line), body }, problems };
}

function readBatch(
  row: CsvRow,
  { mark, columns }: CsvTable,
  known: Known,
): { batch: BatchBody; problems: CsvProblem[] } {
  const wrong = (field: string, sentence: string): CsvProblem => ({ line: row.line, field, sentence });
  const method = known.methods.find(({ code }) => code === row.cell('method'));
  const material = known.materials.find(({ code }) => code === row.cell('material'));
  const ask: Record<string, unknown> = { geometry: {}, options: {} };
  const own = new Map(method ? askColumns(methodOf(method)).map((column) => [column.path, column]) : []);
  const problems = columns.flatMap((name): CsvProblem[] => {
    const [text, column] = [row.cell(name), own.get(name)];
    if (!text || !method || isOrdinary(name)) return [];
    if (!column) return [wrong(name, `${method.designation} does not ask for ${name}.`)];
    const read = readCell(column.type, text, mark);
    if ('reason' in read) return [wrong(name, read.reason)];
    put(ask, name, read.value);
    return [];
  });
  const unknown = [
    ...(method ? [] : [wrong('method', `"${row.cell('method')}" is no method that the lab offers.`)]),
    ...(material || !row.cell('material')
      ? []
      : [wrong('material', `"${row.cell('material')}" is no material of the library.`)]),
  ];
  const specimenCount = figure(row.cell('specimens'), { mark });
  const batch = {
    label: row.cell('label'),
    methodId: method?.id ?? '',
    materialId: material?.id ?? null,
    specimenCount,
    ask,
  };
  return { batch, problems: [...unknown, ...problems] };
}

function isOrdinary(name: string): boolean {
  return [...REQUEST_COLUMNS, ...BATCH_COLUMNS].some((each) => each === name);
}

/** A cell that is no number stays NaN, which the check of the shape then names. */
function figure(text: string, { mark }: Pick<CsvTable, 'mark'>): number {
  const read = parseNumber(text, mark);
  return 'value' in read ? read.value : NaN;
}

/** Lines of one request may repeat what the first says of it, or leave it empty. */
function disagreeing(rows: readonly CsvRow[]): CsvProblem[] {
  const [first, ...others] = rows;
  return others.flatMap(({ line, cell }) =>
    REQUEST_COLUMNS.filter((name) => cell(name) !== '' && cell(name) !== first!.cell(name)).map((field) => ({
      ...{ line, field, sentence: `This differs from line ${first!.line} of the same request.` },
    })),
  );
}

/** The check that a form gets, told by line and column. */
function shapeOf(body: SaveRequestBody, rows: readonly CsvRow[]): CsvProblem[] {
  const errors = validateSync(plainToInstance(SaveRequestDto, body), { stopAtFirstError: true });
  return problemsOf(errors).map(({ field, sentence }) => {
    const [, index, inside] = /^batches\[(\d+)\]\.(.*)$/.exec(field) ?? [];
    const line = rows[Number(index ?? 0)]!.line;
    return { line, field: COLUMN_OF[inside ?? field] ?? inside ?? field, sentence };
  });
}

const COLUMN_OF: Record<string, string> = {
  methodId: 'method',
  materialId: 'material',
  specimenCount: 'specimens',
  teamId: 'team',
};
