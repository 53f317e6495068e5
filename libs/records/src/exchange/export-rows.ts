import type { DataSource, QueryRunner } from 'typeorm';
import type { ExportTable } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';

/** What opens doors, or what the system keeps for itself for hours, is in no export. */
const TABLES_LEFT_OUT = ['migration', 'session', 'sign_in_attempt', 'idempotency_key', 'fact_change'];
const COLUMNS_LEFT_OUT = ['password_hash', 'sign_on_subject', 'token_hash', 'key_hash', 'secret'];

/** A file is a row of its own size; others are fetched by the hundred. */
const AT_A_TIME = { withFiles: 1, plain: 500 };

/** A reader that stands still for longer loses its export, so that it does not hold the database for ever. */
const LONGEST_PAUSE_S = 120;

interface Column {
  name: string;
  binary: boolean;
}

/** How the rows of a table are handed over. */
export interface ExportOptions {
  /** Leave out what is no text: the content of files. */
  withoutFiles: boolean;
}

/** Everything that can be exported, with how many rows it has now. */
export async function exportTables(records: DataSource): Promise<ExportTable[]> {
  const found = await columnsByTable(records);
  const tables: ExportTable[] = [];
  for (const [name, columns] of found) {
    const [{ rows }] = await records.query<[{ rows: number }]>(`select count(*)::int as rows from "${name}"`);
    tables.push({ name, columns: columns.map((column) => column.name), rows });
  }
  return tables;
}

/** @throws LabError `export/unknown` */
export async function exportColumns(
  records: DataSource,
  table: string,
  { withoutFiles }: ExportOptions,
): Promise<string[]> {
  const columns = (await columnsByTable(records)).get(table);
  if (!columns) throw new LabError('export/unknown', 'There is no such table to export.', { table });
  return columns.filter(({ binary }) => !(withoutFiles && binary)).map(({ name }) => name);
}

/**
 * The rows of tables one after the other, as the database held them at one moment, each as a text of JSON that the database
 * itself wrote: no figure loses a digit. Bytes of files are in base64.
 */
export async function* exportRows(
  records: DataSource,
  tables: readonly string[],
  options: ExportOptions,
): AsyncGenerator<{ table: string; line: string }> {
  const all = await columnsByTable(records);
  const runner = records.createQueryRunner();
  await runner.startTransaction('REPEATABLE READ');
  try {
    await runner.query(`set local idle_in_transaction_session_timeout = '${LONGEST_PAUSE_S}s'`);
    for (const table of tables) {
      const columns = (all.get(table) ?? []).filter(({ binary }) => !(options.withoutFiles && binary));
      for await (const line of rowsOf(runner, table, columns)) yield { table, line };
    }
  } finally {
    await runner.rollbackTransaction().catch(() => {}); // the database may have ended it already
    await runner.release();
  }
}

async function* rowsOf(runner: QueryRunner, table: string, columns: readonly Column[]): AsyncGenerator<string> {
  const parts = columns.map(({ name, binary }) => (binary ? `encode("${name}", 'base64') as "${name}"` : `"${name}"`));
  await runner.query(
    `declare export_rows no scroll cursor for
     select row_to_json(kept)::text as line from (select ${parts.join(', ')} from "${table}") kept`,
  );
  const atATime = columns.some(({ binary }) => binary) ? AT_A_TIME.withFiles : AT_A_TIME.plain;
  for (;;) {
    const rows = (await runner.query(`fetch ${atATime} from export_rows`)) as { line: string }[];
    if (rows.length === 0) break;
    for (const { line } of rows) yield line;
  }
  await runner.query('close export_rows');
}

async function columnsByTable(records: DataSource): Promise<Map<string, Column[]>> {
  const rows = await records.query<(Column & { table: string })[]>(
    `select class.relname as table, attribute.attname as name, attribute.atttypid = 'bytea'::regtype as binary
     from pg_class class join pg_attribute attribute on attribute.attrelid = class.oid
     where class.relnamespace = 'public'::regnamespace and class.relkind = 'r' and attribute.attnum > 0 and not attribute.attisdropped
       and class.relname <> all($1) and attribute.attname <> all($2)
     order by class.relname, attribute.attnum`,
    [TABLES_LEFT_OUT, COLUMNS_LEFT_OUT],
  );
  const tables = new Map<string, Column[]>();
  for (const { table, ...column } of rows) tables.set(table, [...(tables.get(table) ?? []), column]);
  return tables;
}
