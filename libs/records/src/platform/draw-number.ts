import type { EntityManager } from 'typeorm';

/**
 * The next number of a reference, from 1 on, without gaps: it goes back when the transaction does.
 * Others who draw from the same name wait until this transaction is through; draw late.
 */
export async function drawNumber(manager: EntityManager, name: string): Promise<number> {
  const [row] = await manager.query<{ drawn: number }[]>(
    `insert into numbering (name, next) values ($1, 2)
     on conflict (name) do update set next = numbering.next + 1 returning next - 1 as drawn`,
    [name],
  );
  return row!.drawn;
}
