import type { DataSource, EntityManager } from 'typeorm';
import { findByIds } from '../platform/find-by-ids.js';
import { MaterialEntity } from './material.entity.js';
import { MethodEntity } from './method.entity.js';

type Keeper<Row> = (manager: EntityManager, ids: readonly (string | null)[]) => Promise<ReadonlyMap<string, Row>>;

/** Versions of methods by id, at least those asked for as far as they exist. A version is never edited, so that one reading is enough. */
export const methodsKept: Keeper<MethodEntity> = keeperOf(MethodEntity);

/** Materials of the library, likewise: they are added and never edited. */
export const materialsKept: Keeper<MaterialEntity> = keeperOf(MaterialEntity);

/** What is read stays with its database, as long as that is open. */
function keeperOf<Row extends { id: string }>(entity: new () => Row): Keeper<Row> {
  const kept = new WeakMap<DataSource, Map<string, Row>>();
  return async (manager, ids) => {
    const rows = kept.get(manager.dataSource) ?? new Map<string, Row>();
    kept.set(manager.dataSource, rows);
    const missing = ids.filter((id) => id !== null && !rows.has(id));
    const found = await findByIds(manager, entity, missing);
    for (const row of found) rows.set(row.id, row);
    return rows;
  };
}
