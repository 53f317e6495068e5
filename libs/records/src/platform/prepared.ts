import { QueryFailedError } from 'typeorm';
import type { EntityManager } from 'typeorm';

/** What the driver of PostgreSQL offers: its pool, or the one connection of a transaction. */
interface Asked {
  query(statement: { name: string; text: string; values: unknown[] }): Promise<{ rows: unknown[] }>;
}

/**
 * A statement that is asked all day long. Its name is its own in the whole program. What is the same in every call stands in its text
 * (see {@link wordsSql}): for values that it cannot know the server plans anew each time, where it hopes for a better plan.
 */
export interface Prepared {
  name: string;
  text: string;
}

/** Words of our own code as an array within a statement. */
export function wordsSql(words: readonly string[]): string {
  return `array[${words.map((word) => `'${word.replaceAll("'", "''")}'`).join(', ')}]`;
}

/**
 * The rows of a prepared statement: each connection reads and plans it once, where planning a list anew costs the server more
 * than finding it.
 *
 * @throws {QueryFailedError} as TypeORM does
 */
export async function prepared<Row>(
  manager: EntityManager,
  { name, text }: Prepared,
  values: unknown[],
): Promise<Row[]> {
  const connection: unknown = await manager.queryRunner?.connect();
  const asked = (connection ?? (manager.dataSource.driver as unknown as { master: Asked }).master) as Asked;
  try {
    return (await asked.query({ name, text, values })).rows as Row[];
  } catch (error) {
    throw new QueryFailedError(text, values, error as Error);
  }
}
