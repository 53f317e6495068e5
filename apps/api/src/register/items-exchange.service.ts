import { isDeepStrictEqual } from 'node:util';
import type { ImportView, SaveItemBody } from '#libs/contract/src/index.js';
import { fieldProblem, numberProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { checkItem } from '#libs/matching/src/index.js';
import type { Direction, ItemKind, ItemState } from '#libs/matching/src/index.js';
import { ItemRepository, LabRecords } from '#libs/records/src/index.js';
import type { Act, ItemEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { oncePerField } from '../exchange/csv-table.js';
import type { CsvProblem } from '../exchange/csv-table.js';
import type { ReadText } from '../exchange/read-text.js';
import { refuseBadImport } from '../exchange/refuse-bad-import.js';
import type { SignedIn } from '../platform/signed-in.js';
import { exportItems } from './export-items.js';
import { checkable, itemColumns } from './item-columns.js';
import type { CheckedColumns, ItemColumns } from './item-columns.js';
import { addItem, changeItem } from './items.service.js';
import { plainCopy, put } from '../exchange/paths.js';
import { readItemsCsv } from './read-items-csv.js';
import type { CsvItem } from './read-items-csv.js';

/** A line of the file with the row it would become. */
interface Planned<Columns = ItemColumns> {
  line: number;
  before: ItemEntity | null;
  columns: Columns;
  state: ItemState;
}

/** The register as a file, out and in. */
@Injectable()
export class ItemsExchangeService {
  constructor(private readonly records: LabRecords) {}

  async export(kind?: ItemKind): Promise<string> {
    return exportItems(await new ItemRepository(this.records.manager).list(kind));
  }

  /** All or nothing: with one bad line, or as a dry run, nothing is kept and every problem is told. @throws {LabError} `import/invalid` */
  import({ text, encoding }: ReadText, dryRun: boolean, by: SignedIn): Promise<ImportView> {
    const { items, problems } = readItemsCsv(text);
    return this.records.act(by.id, async (act) => {
      const planned = await plan(act.manager, items);
      const all = oncePerField([...problems, ...planned.flatMap(problemsOf)]);
      const bad = new Set(all.map(({ line }) => line));
      const good = planned.filter((each): each is Planned<CheckedColumns> => !bad.has(each.line));
      const created = good.filter(({ before }) => before === null).length;
      const updated = good.filter((each) => each.before !== null && differs(each)).length;
      const lines = new Set([...items.map(({ line }) => line), ...[...bad].filter((line) => line > 1)]).size;
      const view = { dryRun, encoding, lines, problems: all };
      refuseBadImport(view);
      if (dryRun) act.nothing(undefined);
      else await keep(act, good, { created, updated });
      return { ...view, created, updated, unchanged: good.length - created - updated };
    });
  }
}

async function plan(manager: EntityManager, items: readonly CsvItem[]): Promise<Planned[]> {
  const known = await new ItemRepository(manager).findByTags(items.map(({ tag }) => tag));
  const byTag = new Map(known.map((row) => [row.tag, row]));
  return items.map((item) => {
    const before = byTag.get(item.tag) ?? null;
    const { state, ...body } = merged(item, before);
    return { line: item.line, before, state, columns: itemColumns(body) };
  });
}

/** What the row is now, with what the line says put over it. */
function merged({ kind, said }: CsvItem, before: ItemEntity | null): SaveItemBody & { state: ItemState } {
  const { id: _id, registeredAt: _at, version: _version, ...kept } = before ?? ({} as Partial<ItemEntity>);
  const whole = plainCopy({
    ratings: {},
    utilities: [],
    details: {},
    state: 'in-service',
    ...kept,
    kind,
  });
  for (const [path, value] of said) {
    // A direction that an item is not made for is absent, and a new item is in service unless the file says otherwise.
    const isCleared = value === null || (Array.isArray(value) && value.length === 0);
    if (isCleared && path.startsWith('ratings.')) delete whole.ratings[path.slice('ratings.'.length) as Direction];
    else if (value !== null || path !== 'state') put(whole, path, value);
  }
  return whole as SaveItemBody & { state: ItemState };
}

function problemsOf({ line, before, columns, state }: Planned): CsvProblem[] {
  const other = before && before.kind !== columns.kind ? `${before.tag} is registered as a ${before.kind}.` : null;
  if (other) return [{ line, field: 'kind', sentence: other }];
  const found = [...checkItem(checkable(columns, state)), ...ownProblems(columns)];
  return found.map(({ field, sentence }) => ({ line, field, sentence }));
}

/** What only the register knows, and the core therefore does not check. */
function ownProblems({ serialNumber, calibrationIntervalMonths }: ItemColumns): FieldProblem[] {
  const months = { unit: 'months', min: 1, max: 120, whole: true };
  const interval =
    calibrationIntervalMonths === null
      ? null
      : numberProblem('calibrationIntervalMonths', calibrationIntervalMonths, months);
  const long = { field: 'serialNumber', found: serialNumber, allowed: 'text of at most 80 characters', unit: '' };
  return [interval, serialNumber.length > 80 ? fieldProblem(long) : null].filter((problem) => problem !== null);
}

/** One new plan is announced for the whole file. */
async function keep(
  act: Act,
  planned: readonly Planned<CheckedColumns>[],
  counts: { created: number; updated: number },
): Promise<void> {
  if (counts.created + counts.updated === 0) return act.nothing(undefined);
  for (const each of planned) {
    if (each.before === null) await addItem(act, each.columns, each.state);
    else if (differs(each)) await changeItem(act, each.before, changesOf(each));
  }
  await act.record({ kind: 'items/imported', subjectId: 'register', after: counts });
}

function differs(planned: Planned<CheckedColumns>): boolean {
  return Object.keys(changesOf(planned)).length > 0;
}

/** The columns of a registered item that the file says otherwise. */
function changesOf({ before, columns, state }: Planned<CheckedColumns>): Partial<ItemEntity> {
  const said = Object.entries({ ...columns, state });
  return Object.fromEntries(
    said.filter(([key, value]) => !isDeepStrictEqual(value, before?.[key as keyof ItemEntity])),
  );
}
