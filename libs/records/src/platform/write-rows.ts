import type { EntityManager, EntityTarget, FindOptionsWhere, ObjectLiteral, QueryPartialEntity } from 'typeorm';

/** One statement of PostgreSQL carries at most 65 535 values. */
const ROWS_AT_ONCE = 500;

/** Adds rows, however many; columns that are left out take their defaults. */
export async function insertRows<Row extends ObjectLiteral>(
  manager: EntityManager,
  entity: EntityTarget<Row>,
  rows: readonly NoInfer<QueryPartialEntity<Row>>[],
): Promise<void> {
  for (let at = 0; at < rows.length; at += ROWS_AT_ONCE)
    await manager.insert(entity, rows.slice(at, at + ROWS_AT_ONCE));
}

/** Adds rows, or overwrites those with the same key. */
export async function upsertRows<Row extends ObjectLiteral>(
  manager: EntityManager,
  entity: EntityTarget<Row>,
  rows: readonly NoInfer<QueryPartialEntity<Row>>[],
  key: (keyof NoInfer<Row> & string)[],
): Promise<void> {
  await manager.upsert(entity, [...rows], key);
}

/** Changes the rows that are still as `where` says. @returns how many there were */
export async function updateRows<Row extends ObjectLiteral>(
  manager: EntityManager,
  entity: EntityTarget<Row>,
  where: NoInfer<FindOptionsWhere<Row>>,
  set: NoInfer<QueryPartialEntity<Row>>,
): Promise<number> {
  return (await manager.update(entity, where, set)).affected ?? 0;
}
