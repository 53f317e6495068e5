import type { EntityManager, ObjectLiteral } from 'typeorm';

/**
 * The entity of a row that a statement returns as `to_jsonb(row)`: properties by their own names, instants as dates. So one statement
 * can read from many tables at once.
 */
export function entityOf<Row extends ObjectLiteral>(
  manager: EntityManager,
  entity: new () => Row,
  json: Record<string, unknown>,
): Row {
  const columns = manager.dataSource.getMetadata(entity).columns.map(({ propertyName, databaseName, type }) => {
    const value = json[databaseName];
    return [propertyName, type === 'timestamptz' && value !== null ? new Date(value as string) : value] as const;
  });
  return Object.fromEntries(columns) as Row;
}
