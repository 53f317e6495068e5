import type { EntityManager } from 'typeorm';

/** Not worth keeping: what lasts for hours at most, and what the migrations write themselves. */
const LEFT_OUT = ['migration', 'session', 'sign_in_attempt', 'idempotency_key', 'fact_change'];

interface KeptTable {
  name: string;
  /** Has a column that holds whole files. */
  withFiles: boolean;
}

/** The lab's tables, each after those that it refers to. */
export async function tablesInOrder(manager: EntityManager): Promise<KeptTable[]> {
  const tables = await manager.query<(KeptTable & { needs: string[] })[]>(
    `select class.relname as name,
       exists (select 1 from pg_attribute where attrelid = class.oid and atttypid = 'bytea'::regtype and not attisdropped) as "withFiles",
       array(select referred.relname::text from pg_constraint join pg_class referred on referred.oid = confrelid
         where conrelid = class.oid and contype = 'f' and confrelid <> class.oid) as needs
     from pg_class class where class.relnamespace = 'public'::regnamespace and class.relkind = 'r' and class.relname <> all($1)
     order by class.relname`,
    [LEFT_OUT],
  );
  const ordered: typeof tables = [];
  while (ordered.length < tables.length) {
    const done = new Set(ordered.map(({ name }) => name));
    const next = tables.filter(
      ({ name, needs }) => !done.has(name) && needs.every((need) => done.has(need) || LEFT_OUT.includes(need)),
    );
    if (next.length === 0)
      throw new Error('Tables refer to each other in a circle; they cannot be restored one after the other.');
    ordered.push(...next);
  }
  return ordered.map(({ name, withFiles }) => ({ name, withFiles }));
}
