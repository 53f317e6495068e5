import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DataSource } from 'typeorm';
import { createApi } from '#apps/api/src/platform/create-api.js';
import {
  LabRecords,
  backupLines,
  DEMO_PASSWORD,
  migrate,
  openMigrated,
  openRecords,
  verifyRecord,
} from '#libs/records/src/index.js';
import { MIGRATIONS } from '#libs/records/src/migrations.js';
import { loadDemoLab } from '#seed/load-demo-lab.js';
import { Client } from '../support/client.js';
import { emptyDatabase, freshDatabase } from '../support/database.js';
import { labClock } from '../support/lab-clock.js';
import { projectRoot } from '../support/maybe.js';

/** Every released schema: its last migration, and the hash of the text of all up to it. A release adds a line; none is changed. */
const RELEASES = [
  {
    last: 'FindRequestsByWords1764000003000',
    sha256: 'c023f45691f5b9e14b8f5312695408a2c7d017128f958311bea456c44c766a75',
  },
] as const;

const FOLDER = join(projectRoot(), 'libs', 'records', 'src', 'migrations');
const QUIET = { host: '127.0.0.1', port: 0, proxies: 0, log: 'quiet', sessionIdleMin: 60, sessionHours: 8 } as const;

describe.each(RELEASES)('a database of the release that ended with $last', ({ last, sha256 }) => {
  const released = MIGRATIONS.slice(0, MIGRATIONS.findIndex(({ name }) => name === last) + 1);

  it('is made by migrations that nobody has edited since', () => {
    const hash = createHash('sha256');
    for (const file of readdirSync(FOLDER).sort().slice(0, released.length))
      hash.update(readFileSync(join(FOLDER, file)));
    expect(hash.digest('hex')).toBe(sha256);
  });

  it('is brought to the newest schema with everything that was in it, and the lab opens on it', async () => {
    const database = await emptyDatabase();
    const old = await openRecords(database.url, { poolSize: 2, migrations: released });
    await migrate(old);
    await fillWithDemo(old);
    const columns = await columnsOf(old);
    const before = await contents(old, columns);
    expect(Object.values(before).filter((found) => !found.startsWith('0 ')).length).toBeGreaterThan(25);
    await old.destroy();

    const records = await openMigrated(database.url, { poolSize: 5 });
    expect(await contents(records, columns)).toEqual(before);
    expect((await verifyRecord(records)).faults).toEqual([]);
    const api = await createApi({ ...QUIET, databaseUrl: database.url }, new LabRecords(records, labClock));
    await api.listen(0, '127.0.0.1');
    const manager = new Client(await api.getUrl());
    await manager.signIn('ian.marsh@northmoor.example', DEMO_PASSWORD);
    const { status, body } = await manager.get('/requests');
    expect(status).toBe(200);
    expect((await manager.get(`/requests/${body.rows[0].id}`)).body.reference).toBe(body.rows[0].reference);

    await api.close();
    await records.destroy();
    await database.drop();
  }, 60_000);
});

/** Writes the demo lab row by row into the columns that there were then; what is newer is left out. */
async function fillWithDemo(old: DataSource): Promise<void> {
  const newest = await freshDatabase();
  const source = await openRecords(newest.url, { poolSize: 2 });
  await loadDemoLab(source, Date.parse('2026-11-25T09:00:00Z'));
  await old.query('alter table record_event disable trigger user'); // links of the chain keep their places
  await old.query('delete from record_head');
  const known = new Set(Object.keys(await columnsOf(old)));
  let table = '';
  for await (const line of backupLines(source)) {
    const mark = /^\{"table":"(\w+)"\}$/.exec(line)?.[1];
    if (mark !== undefined) table = mark;
    else if (known.has(table) && !line.startsWith('{"end":')) {
      const row = `select * from json_populate_record(null::"${table}", $1::json)`;
      await old.query(`insert into "${table}" overriding system value ${row}`, [line]);
    }
  }
  await old.query('alter table record_event enable trigger user');
  await source.destroy();
  await newest.drop();
}

/** Columns of every table, but of the list of migrations. */
async function columnsOf(records: DataSource): Promise<Record<string, string[]>> {
  const rows = await records.query<{ name: string; columns: string[] }[]>(
    `select table_name as name, array_agg(column_name::text order by column_name) as columns from information_schema.columns
     join pg_class on relname = table_name and relnamespace = 'public'::regnamespace and relkind = 'r'
     where table_schema = 'public' and table_name <> 'migration' group by table_name`,
  );
  return Object.fromEntries(rows.map(({ name, columns }) => [name, columns]));
}

/** For each table how many rows, and a hash over these columns of all. */
async function contents(records: DataSource, columns: Record<string, string[]>): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const [table, names] of Object.entries(columns)) {
    const line = `jsonb_build_array(${names.map((name) => `"${name}"`).join(', ')})::text`;
    const [row] = await records.query<{ found: string }[]>(
      `select count(*) || ' ' || coalesce(md5(string_agg(line, ',' order by line)), '') as found from (select ${line} as line from "${table}") rows`,
    );
    found[table] = row!.found;
  }
  return found;
}
