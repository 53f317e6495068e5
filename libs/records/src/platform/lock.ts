import type { EntityManager } from 'typeorm';

/** Waits until no other transaction holds the lock of this name, and holds it to the end of this one. */
export async function lockWhile(manager: EntityManager, name: string): Promise<void> {
  await manager.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [name]);
}
