import type { ClientBase } from 'pg';
import { QueryFailedError } from 'typeorm';
import type { EntityManager } from 'typeorm';

/**
 * A statement that runs all day long. Its name is its own in the whole program. What is the same in every call stands in its text
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
  const runner = manager.queryRunner ?? manager.dataSource.createQueryRunner();
  try {
    const connection = (await runner.connect()) as ClientBase; // TypeORM itself passes no name on
    return (await connection.query({ name, text, values })).rows as Row[];
  } catch (error) {
    throw new QueryFailedError(text, values, error as Error);
  } finally {
    if (runner !== manager.queryRunner) await runner.release();
  }
}
