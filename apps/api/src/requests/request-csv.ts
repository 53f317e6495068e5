import { at, askFields } from '#libs/matching/src/index.js';
import type { ItemField, Method } from '#libs/matching/src/index.js';
import type { RequestAround } from '#libs/records/src/index.js';
import { writeCell } from '../exchange/csv-cell.js';
import { writeTable } from '../exchange/csv-table.js';

/** What a line says of its request; equal on all lines of one. */
export const REQUEST_COLUMNS = [
  'request',
  'title',
  'team',
  'purpose',
  'dueAt',
  'specimensAt',
  'weight',
  'disposal',
] as const;
/** Beside these, whose request it is, by mail address: in a file that brings open work along from elsewhere. */
export const REQUESTER_COLUMN = 'requester';
/** What a line says of its batch, beside the ask. */
export const BATCH_COLUMNS = ['label', 'method', 'material', 'specimens'] as const;

export interface AskColumn {
  path: string;
  type: ItemField['type'];
}

/** The columns that an ask by this method fills, figures in the core's units as their names say. */
export function askColumns(method: Method): AskColumn[] {
  const asked = askFields(method).filter(({ field }) => field !== 'materialId' && field !== 'specimens');
  const own = asked.flatMap(({ field, type }): AskColumn[] =>
    type === 'band'
      ? [`${field}.low`, `${field}.high`].map((path) => ({ path, type: 'number' as const }))
      : [{ path: field, type }],
  );
  return [
    ...own,
    { path: 'endShape', type: 'choice' },
    { path: 'hazards', type: 'choices' },
    { path: 'confirmed', type: 'choices' },
  ];
}

/** Every column that the methods of a lab can fill, each once. */
export function allAskColumns(methods: readonly Method[]): AskColumn[] {
  return [...new Map(methods.flatMap(askColumns).map((column) => [column.path, column])).values()];
}

/** Requests as CSV, one batch a line, in the form that the import takes. No cell begins a formula. */
export function exportRequests(requests: readonly RequestAround[], methods: readonly Method[]): string {
  const columns = allAskColumns(methods);
  const rows = requests.flatMap((around) =>
    around.batches.map((each) => [
      ...requestCells(around),
      ...[each.batch.label, each.method.code, each.material?.code ?? ''].map((text) => writeCell('text', text)),
      String(each.batch.specimenCount),
      ...columns.map(({ path, type }) => writeCell(type, at(each.batch.ask, path))),
    ]),
  );
  return writeTable([...REQUEST_COLUMNS, ...BATCH_COLUMNS, ...columns.map(({ path }) => path)], rows);
}

function requestCells({ request, team }: RequestAround): string[] {
  const { reference, title, purpose, dueAt, specimensAt, weight, disposal } = request;
  const texts = [reference, title, team.name, purpose, dueAt?.toISOString() ?? '', specimensAt?.toISOString() ?? ''];
  return [...texts.map((text) => writeCell('text', text)), String(weight), disposal];
}
