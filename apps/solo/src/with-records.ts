import type { DataSource } from 'typeorm';
import { LabError } from '#libs/errors/src/index.js';
import { openRecords } from '#libs/records/src/index.js';
import { readConfig } from './config.js';
import { openForCommand } from './open-database.js';

/** Runs a command on the lab's database, open or not, and leaves it as it was. */
export async function withRecords(
  command: (lab: { url: string; records: DataSource }) => Promise<void>,
): Promise<void> {
  const database = await openForCommand(readConfig());
  try {
    const records = await openRecords(database.url, { poolSize: 3, name: 'loadtrain command' });
    await command({ url: database.url, records }).finally(() => records.destroy());
  } catch (error) {
    console.error(error instanceof LabError ? error.message : error);
    process.exitCode = 1;
  } finally {
    await database.stop();
  }
}
