import type { DataSource } from 'typeorm';
import { factsChangedSince, openRecords } from '#libs/records/src/index.js';
import { freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';

/** With one connection in the pool, whoever does not give it back lets the next one wait for ever. */
describe('a prepared statement, with one connection for all', () => {
  let database: FreshDatabase;
  let records: DataSource;

  beforeAll(async () => {
    database = await freshDatabase();
    records = await openRecords(database.url, { poolSize: 1 });
  });
  afterAll(async () => {
    await records.destroy();
    await database.drop();
  });

  const STAMP = '1000:1000:';
  const preparedThere = async () =>
    (await records.query<{ name: string }[]>('select name from pg_prepared_statements')).map(({ name }) => name);

  it('is read and planned once by its connection, under its name', async () => {
    for (let at = 0; at < 3; at++) await factsChangedSince(records.manager, STAMP);
    expect(await preparedThere()).toEqual(['facts-changed']);
  });

  it('runs on the connection of its transaction', async () => {
    const changed = await records.transaction((manager) => factsChangedSince(manager, STAMP));
    expect(changed).toBe(await factsChangedSince(records.manager, STAMP));
  });

  it('gives its connection back also when it failed', async () => {
    await expect(factsChangedSince(records.manager, 'no stamp')).rejects.toThrow('invalid input syntax');
    await expect(factsChangedSince(records.manager, 'no stamp')).rejects.toThrow('invalid input syntax');
    expect(await preparedThere()).toEqual(['facts-changed']);
  });
});
