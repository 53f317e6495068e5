import { DataSource } from 'typeorm';
import { ENTITIES } from '../entities.js';
import { MIGRATIONS } from '../migrations.js';
import { SnakeNames } from './naming.js';

interface Options {
  /** Most connections held at a time. */
  poolSize?: number;
  /** Shown by the server beside each connection. */
  name?: string;
  /** Only these steps of the schema, for a backup that was made before the others. */
  migrations?: readonly (typeof MIGRATIONS)[number][];
}

/**
 * Opens the lab's database. Migrations are not run: see `migrate`.
 *
 * @param url connection string of PostgreSQL 15 or later
 * @throws the driver's error when the server cannot be reached
 */
export function openRecords(
  url: string,
  { poolSize = 10, name = 'loadtrain', migrations = MIGRATIONS }: Options = {},
): Promise<DataSource> {
  return new DataSource({
    type: 'postgres',
    url,
    applicationName: name,
    entities: [...ENTITIES],
    migrations: [...migrations],
    migrationsTableName: 'migration',
    migrationsTransactionMode: 'each',
    namingStrategy: new SnakeNames(),
    extra: { max: poolSize, connectionTimeoutMillis: 10_000, idle_in_transaction_session_timeout: 60_000 },
  }).initialize();
}
