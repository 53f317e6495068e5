import type { DataSource, EntityManager } from 'typeorm';
import { LabError } from '#libs/errors/src/index.js';
import { MIGRATIONS } from '../migrations.js';
import type { BackupHead, BackupMark } from './backup.js';
import { migrate } from './migrate.js';
import { openRecords } from './open-records.js';
import { tablesInOrder } from './tables-in-order.js';

const MOST_CHARACTERS_AT_ONCE = 4_000_000;
const MOST_ROWS_AT_ONCE = 500;

/**
 * Puts a backup into an empty database and brings it to the newest schema. All or nothing.
 *
 * @param url the empty database
 * @param lines as `backupLines` gave them
 * @returns how many rows came back
 * @throws {LabError} `backup/unreadable`, `backup/newer`, `backup/not-empty`
 */
export async function restoreLines(url: string, lines: AsyncIterable<string>): Promise<number> {
  const reader = lines[Symbol.asyncIterator]();
  const records = await openRecords(url, { poolSize: 3, migrations: migrationsOf(await headFrom(reader)) });
  try {
    await refuseFilled(records);
    await migrate(records);
    const rows = await records.transaction((manager) => fill(manager, reader));
    await bringUpToDate(url);
    return rows;
  } finally {
    await records.destroy();
  }
}

async function headFrom(reader: AsyncIterator<string>): Promise<BackupHead> {
  const first = await reader.next();
  const head = first.done ? null : (parsed(first.value) as BackupHead | null);
  if (head?.loadtrainBackup !== 1) throw new LabError('backup/unreadable', 'This is not a backup of a lab.');
  return head;
}

function migrationsOf({ schema, at }: BackupHead): (typeof MIGRATIONS)[number][] {
  const known = MIGRATIONS.filter(({ name }) => schema.includes(name));
  if (known.length === schema.length) return known;
  throw new LabError(
    'backup/newer',
    `This backup of ${at} is from a newer version. Restore it with that version or a later one.`,
  );
}

async function refuseFilled(records: DataSource): Promise<void> {
  const [{ filled }] = await records.query<[{ filled: boolean }]>(
    `select exists (select 1 from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r') as filled`,
  );
  if (filled)
    throw new LabError('backup/not-empty', 'A backup is restored into an empty database only. Make a new one.');
}

async function fill(manager: EntityManager, reader: AsyncIterator<string>): Promise<number> {
  // The record keeps the places in its chain that it had: the trigger that gives places stays out of it.
  await manager.query('alter table record_event disable trigger user');
  await manager.query('delete from record_head');
  const known = new Set((await tablesInOrder(manager)).map(({ name }) => name));
  const rows = await fillTables(manager, reader, known);
  await manager.query('alter table record_event enable trigger user');
  for (const table of known) await setSequences(manager, table);
  return rows;
}

async function fillTables(manager: EntityManager, reader: AsyncIterator<string>, known: Set<string>): Promise<number> {
  let table = '';
  let waiting: string[] = [];
  let rows = 0;
  const put = async () => {
    if (waiting.length > 0) await insertLines(manager, table, waiting);
    rows += waiting.length;
    waiting = [];
  };
  for (let next = await reader.next(); !next.done; next = await reader.next()) {
    const mark = markIn(next.value);
    if (mark === null) {
      waiting.push(next.value);
      const characters = waiting.reduce((sum, line) => sum + line.length, 0);
      if (waiting.length >= MOST_ROWS_AT_ONCE || characters > MOST_CHARACTERS_AT_ONCE) await put();
      continue;
    }
    await put();
    if ('end' in mark) return checked(rows, mark.rows);
    table = mark.table;
    if (!known.has(table)) throw new LabError('backup/unreadable', `This backup has a table ${table} that no lab has.`);
  }
  throw new LabError('backup/unreadable', 'This backup ends in the middle. Take another copy.');
}

function checked(found: number, promised: number): number {
  if (found === promised) return found;
  throw new LabError(
    'backup/unreadable',
    `This backup should hold ${promised} rows and holds ${found}. Take another copy.`,
  );
}

/** A mark is short and has its word first; rows of tables begin with a column, in the database's own way of writing. */
function markIn(line: string): BackupMark | null {
  return /^\{"(table|end)":/.test(line) ? (parsed(line) as BackupMark) : null;
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

async function insertLines(manager: EntityManager, table: string, lines: string[]): Promise<void> {
  const statement = `insert into "${table}" overriding system value select * from json_populate_recordset(null::"${table}", $1::json)`;
  await manager.query(statement, [`[${lines.join(',')}]`]);
}

/** Numbers go on where they were. */
async function setSequences(manager: EntityManager, table: string): Promise<void> {
  const columns = await manager.query<{ name: string; sequence: string }[]>(
    `select column_name as name, pg_get_serial_sequence(quote_ident(table_name), column_name) as sequence from information_schema.columns
     where table_schema = 'public' and table_name = $1 and pg_get_serial_sequence(quote_ident(table_name), column_name) is not null`,
    [table],
  );
  for (const { name, sequence } of columns) {
    await manager.query(`select setval($1, coalesce((select max("${name}") from "${table}"), 0) + 1, false)`, [
      sequence,
    ]);
  }
}

async function bringUpToDate(url: string): Promise<void> {
  const records = await openRecords(url, { poolSize: 3 });
  await migrate(records).finally(() => records.destroy());
}
