import type { EntityManager } from 'typeorm';

/** The rows with these ids, as far as they exist; no query where there is no id. */
export async function findByIds<Row extends { id: string }>(
  manager: EntityManager,
  entity: new () => Row,
  ids: readonly (string | null)[],
): Promise<Row[]> {
  const wanted = [...new Set(ids)].filter((id) => id !== null);
  if (wanted.length === 0) return [];
  return manager.createQueryBuilder(entity, 'row').where('row.id = any(:wanted)', { wanted }).getMany();
}
