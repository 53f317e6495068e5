import type { DataSource } from 'typeorm';

const MIGRATION_LOCK = 732_101; // any number that nothing else in this database locks

/**
 * Brings the database to the newest schema. Any number of processes may call it at once: one works, the others wait.
 *
 * @returns the names of the migrations that were run now
 */
export async function migrate(records: DataSource): Promise<string[]> {
  const guard = records.createQueryRunner();
  await guard.query('select pg_advisory_lock($1)', [MIGRATION_LOCK]);
  try {
    return (await records.runMigrations()).map(({ name }) => name);
  } finally {
    await guard.query('select pg_advisory_unlock($1)', [MIGRATION_LOCK]);
    await guard.release();
  }
}

/** The statements that are missing between the database and the entities; none when every migration was written. */
export async function drift(records: DataSource): Promise<{ up: string[]; down: string[] }> {
  const { upQueries, downQueries } = await records.driver.createSchemaBuilder().log();
  return { up: upQueries.map(({ query }) => query), down: downQueries.map(({ query }) => query).reverse() };
}
