import { DataSource } from 'typeorm';
import { ENTITIES } from '../entities.js';
import { MIGRATIONS } from '../migrations.js';
import { SnakeNames } from './naming.js';

interface Options {
  /** Most connections held at a time. */
  poolSize?: number;
  /** Shown by the server beside each connection. */
  name?: string;
}

/**
 * Opens the lab's database. Migrations are not run: see `migrate`.
 *
 * @param url connection string of PostgreSQL 15 or later
 * @throws the driver's error when the server cannot be reached
 */
export function openRecords(url: string, { poolSize = 10, name = 'loadtrain' }: Options = {}): Promise<DataSource> {
  return new DataSource({
    type: 'postgres',
    url,
    applicationName: name,
    entities: [...ENTITIES],
    migrations: [...MIGRATIONS],
    migrationsTableName: 'migration',
    migrationsTransactionMode: 'each',
    namingStrategy: new SnakeNames(),
    extra: { max: poolSize, connectionTimeoutMillis: 10_000, idle_in_transaction_session_timeout: 60_000 },
  }).initialize();
}
