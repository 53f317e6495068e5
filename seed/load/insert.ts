import type { EntityManager, EntityTarget, ObjectLiteral } from 'typeorm';

/** PostgreSQL takes so many parameters in one statement; rows are written in portions below that. */
const PORTION = 500;

/** Inserts rows of one table, however many. */
export async function insertAll<Row extends ObjectLiteral>(
  manager: EntityManager,
  entity: EntityTarget<Row>,
  rows: readonly Partial<Row>[],
): Promise<void> {
  for (let start = 0; start < rows.length; start += PORTION) {
    await manager.insert(entity, rows.slice(start, start + PORTION));
  }
}
