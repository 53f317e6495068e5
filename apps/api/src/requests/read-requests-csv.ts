import { instantAt, isDate } from '#libs/calendar/src/index.js';
import type { BatchBody, PersonView, SaveRequestBody, TeamRef } from '#libs/contract/src/index.js';
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
import { allAskColumns, askColumns, BATCH_COLUMNS, REQUEST_COLUMNS, REQUESTER_COLUMN } from './request-csv.js';
import { SaveRequestDto } from './request.dto.js';

const ORDINARY: readonly string[] = [...REQUEST_COLUMNS, REQUESTER_COLUMN, ...BATCH_COLUMNS];

/** What a day means where an instant is asked for, by the lab's clock: due at the end of work, as in the form; there in the morning. */
const DUE_AT = '17:00';
const SPECIMENS_AT = '08:00';

/** What the words of a file mean in this lab. */
export interface Known {
  methods: readonly MethodEntity[];
  materials: readonly MaterialEntity[];
  teams: readonly TeamRef[];
  people: readonly PersonView[];
  /** Of the lab: a day in the file is a day there. */
  timeZone: string;
}

/** A request of the file, with the line on which each batch stands. */
export interface CsvRequest {
  lines: number[];
  /** What the file calls it, such as its number in the program that it comes from. */
  name: string;
  /** Who is said to ask; null when the file says nothing. */
  requester: PersonView | null;
  body: SaveRequestBody;
}

/** Reads a file of requests: lines that name the same request are its batches. */
export function readRequestsCsv(text: string, known: Known): { requests: CsvRequest[]; problems: CsvProblem[] } {
  const asks = allAskColumns(known.methods.map(methodOf)).map(({ path }) => path);
  const needed = ['request', 'title', 'team', 'method', 'specimens'];
  const table = readTable(text, { needed, known: [...ORDINARY, ...asks] });
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
    dueAt: instantIn(first.cell('dueAt'), DUE_AT, known.timeZone),
    specimensAt: instantIn(first.cell('specimensAt'), SPECIMENS_AT, known.timeZone),
    ...{ weight: figure(first.cell('weight') || '1', table), disposal: first.cell('disposal') || 'keep-90-days' },
    batches: batches.map(({ batch }) => batch),
  } as SaveRequestBody;
  const mail = first.cell(REQUESTER_COLUMN).toLowerCase();
  const requester = known.people.find(({ email, active }) => active && email === mail) ?? null;
  const wrong = (field: string, sentence: string): CsvProblem => ({ line: first.line, field, sentence });
  const strange = [
    ...(first.cell('request') ? [] : [wrong('request', 'The request has no name or number.')]),
    ...(team ? [] : [wrong('team', `"${first.cell('team')}" is no team of the lab.`)]),
    ...(requester || !mail ? [] : [wrong(REQUESTER_COLUMN, `"${mail}" is the address of nobody in the lab.`)]),
  ];
  const problems = [
    ...strange,
    ...disagreeing(rows),
    ...batches.flatMap((each) => each.problems),
    ...shapeOf(body, rows),
  ];
  return { request: { lines: rows.map(({ line }) => line), name: first.cell('request'), requester, body }, problems };
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
  return ORDINARY.some((each) => each === name);
}

/** A cell that is no number stays NaN, which the check of the shape then names. */
function figure(text: string, { mark }: Pick<CsvTable, 'mark'>): number {
  const read = parseNumber(text, mark);
  return 'value' in read ? read.value : NaN;
}

/** An instant as the file has it, or a day (2026-12-15 or 15.12.2026) at an hour of the lab's; what is neither is left to the check. */
function instantIn(text: string, hour: string, timeZone: string): string | null {
  const [, day, month, year] = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text) ?? [];
  const date = day ? `${year}-${month!.padStart(2, '0')}-${day.padStart(2, '0')}` : text;
  return isDate(date) ? new Date(instantAt(date, hour, timeZone)).toISOString() : text || null;
}

/** Lines of one request may repeat what the first says of it, or leave it empty. */
function disagreeing(rows: readonly CsvRow[]): CsvProblem[] {
  const [first, ...others] = rows;
  return others.flatMap(({ line, cell }) =>
    [...REQUEST_COLUMNS, REQUESTER_COLUMN]
      .filter((name) => cell(name) !== '' && cell(name) !== first!.cell(name))
      .map((field) => ({
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
