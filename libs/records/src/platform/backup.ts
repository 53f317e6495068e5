import type { DataSource, QueryRunner } from 'typeorm';
import { tablesInOrder } from './tables-in-order.js';

/** The first line of a backup: of which schema it is, and when it was made. */
export interface BackupHead {
  loadtrainBackup: 1;
  /** The migrations that had been run, oldest first. */
  schema: string[];
  at: string;
}

/** Before the rows of each table; at the end one with `end`, so that a file that was cut off shows. */
export type BackupMark = { table: string } | { end: true; rows: number };

/** A file is a row of its own size; others are fetched by the hundred. */
const AT_A_TIME = { withFiles: 1, plain: 500 };

/**
 * Everything that is worth keeping, as lines of JSON: a head, then a mark and one line a row for each table. It is what the
 * database held at one moment, whatever is written meanwhile. Sessions and the like are left out: people sign in again.
 */
export async function* backupLines(records: DataSource): AsyncGenerator<string> {
  const runner = records.createQueryRunner();
  await runner.startTransaction('REPEATABLE READ');
  try {
    yield JSON.stringify(await headOf(runner));
    let rows = 0;
    for (const { name, withFiles } of await tablesInOrder(runner.manager)) {
      yield JSON.stringify({ table: name } satisfies BackupMark);
      for await (const line of rowsOf(runner, name, withFiles ? AT_A_TIME.withFiles : AT_A_TIME.plain)) {
        rows++;
        yield line;
      }
    }
    yield JSON.stringify({ end: true, rows } satisfies BackupMark);
  } finally {
    await runner.rollbackTransaction();
    await runner.release();
  }
}

async function headOf({ manager }: QueryRunner): Promise<BackupHead> {
  const ran = await manager.query<{ name: string }[]>('select name from migration order by timestamp');
  const [{ at }] = await manager.query<[{ at: Date }]>('select now() as at');
  return { loadtrainBackup: 1, schema: ran.map(({ name }) => name), at: at.toISOString() };
}

/** The text is the database's own, never read in between: no figure loses a digit on its way. */
async function* rowsOf({ manager }: QueryRunner, table: string, atATime: number): AsyncGenerator<string> {
  await manager.query(
    `declare backup_rows no scroll cursor for select to_jsonb(kept)::text as line from "${table}" kept`,
  );
  for (;;) {
    const rows = await manager.query<{ line: string }[]>(`fetch ${atATime} from backup_rows`);
    if (rows.length === 0) break;
    for (const { line } of rows) yield line;
  }
  await manager.query('close backup_rows');
}
