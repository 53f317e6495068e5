import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { emptyDatabase } from '../support/database.js';
import { projectRoot } from '../support/maybe.js';
import { openRecords } from '#libs/records/src/index.js';

const command = (databaseUrl: string) =>
  spawnSync(process.execPath, [join('dist', 'apps', 'solo', 'src', 'first-manager.js')], {
    cwd: projectRoot(),
    env: { PATH: process.env['PATH'] ?? '', DATABASE_URL: databaseUrl },
    encoding: 'utf8',
  });

it('a database that holds nothing gets its first manager by one command, once', async () => {
  const database = await emptyDatabase();
  const first = command(database.url);
  expect([first.status, first.stderr]).toEqual([0, '']);
  expect(first.stdout).toMatch(/^Sign in as manager@lab\.example with the password [\w-]{16}\n/);
  const again = command(database.url);
  expect([again.status, again.stdout]).toEqual([1, '']);
  expect(again.stderr).toContain('This lab has people already.');
  const records = await openRecords(database.url, { poolSize: 1 });
  expect(await records.query('select roles from person')).toEqual([{ roles: ['manager'] }]);
  expect((await records.query('select count(*)::int as n from method'))[0].n).toBeGreaterThan(5);
  await records.destroy();
  await database.drop();
});
