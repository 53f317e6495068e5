import type { DataSource } from 'typeorm';
import { migrate } from './migrate.js';
import { openRecords } from './open-records.js';

/** Opens the lab's database and brings it to the newest schema; leaves no connection behind when that does not go well. */
export async function openMigrated(...opening: Parameters<typeof openRecords>): Promise<DataSource> {
  const records = await openRecords(...opening);
  try {
    await migrate(records);
    return records;
  } catch (error) {
    await records.destroy();
    throw error;
  }
}
