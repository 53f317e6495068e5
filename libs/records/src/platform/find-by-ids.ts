import type { EntityManager } from 'typeorm';

/** The rows with these ids, as far as they exist; no query for no id. */
export async function findByIds<Row extends { id: string }>(
  manager: EntityManager,
  entity: new () => Row,
  ids: readonly string[],
): Promise<Row[]> {
  if (ids.length === 0) return [];
  return manager
    .createQueryBuilder(entity, 'wanted')
    .where('wanted.id = any(:ids)', { ids: [...new Set(ids)] })
    .getMany();
}
