import type { EntityManager, ObjectLiteral } from 'typeorm';

/**
 * A row that a statement tells as `to_jsonb(row)`, as TypeORM reads it: properties by their own names, instants as dates. So one
 * statement can tell of many tables at once.
 */
export function entityOf<Row extends ObjectLiteral>(
  manager: EntityManager,
  entity: new () => Row,
  told: Record<string, unknown>,
): Row {
  const columns = manager.dataSource.getMetadata(entity).columns.map(({ propertyName, databaseName, type }) => {
    const value = told[databaseName];
    return [propertyName, type === 'timestamptz' && value !== null ? new Date(value as string) : value] as const;
  });
  return Object.fromEntries(columns) as Row;
}
