import type { DataSource, EntityManager } from 'typeorm';
import { findByIds } from '../platform/find-by-ids.js';
import { MaterialEntity } from './material.entity.js';
import { MethodEntity } from './method.entity.js';

type CachedRead<Row> = (manager: EntityManager, ids: readonly (string | null)[]) => Promise<ReadonlyMap<string, Row>>;

/** Versions of methods by id: at least the wanted ones that exist. A version is never edited, so that it is read once. */
export const cachedMethods: CachedRead<MethodEntity> = cacheOf(MethodEntity);

/** Materials of the library, likewise: they are added and never edited. */
export const cachedMaterials: CachedRead<MaterialEntity> = cacheOf(MaterialEntity);

/** What is read stays with its database, as long as that is open. */
function cacheOf<Row extends { id: string }>(entity: new () => Row): CachedRead<Row> {
  const cache = new WeakMap<DataSource, Map<string, Row>>();
  return async (manager, ids) => {
    const rows = cache.get(manager.dataSource) ?? new Map<string, Row>();
    cache.set(manager.dataSource, rows);
    const missing = ids.filter((id) => id !== null && !rows.has(id));
    const found = await findByIds(manager, entity, missing);
    for (const row of found) rows.set(row.id, row);
    return rows;
  };
}
