import type { EntityManager } from 'typeorm';
import { prepared } from './prepared.js';
import type { Prepared } from './prepared.js';

/** Says, in the transaction that changes it, that something changed which plans are made from. */
export async function touchFacts(manager: EntityManager, what: string): Promise<void> {
  await manager.query('insert into fact_change (transaction, what) values ((pg_current_xact_id()::text)::bigint, $1)', [
    what,
  ]);
}

/**
 * A stamp of the facts as this transaction sees them. Take it in the same repeatable-read transaction that reads the facts.
 */
export async function factsStamp(manager: EntityManager): Promise<string> {
  const [row] = await manager.query<{ stamp: string }[]>('select pg_current_snapshot()::text as stamp');
  return row!.stamp;
}

/**
 * Whether any fact was changed that a reader with this stamp had not seen. Changes not committed yet do not count.
 * What ended before the oldest transaction that ran then was seen: so only the latest few are looked at.
 */
export async function factsChangedSince(manager: EntityManager, stamp: string): Promise<boolean> {
  const [row] = await prepared<{ changed: boolean }>(manager, CHANGED, [stamp]);
  return row!.changed;
}

/** The same as a condition within another statement. @param stamp a parameter of it, e.g. `$1` */
export function factsChangedSql(stamp: string): string {
  return `exists (
    select 1 from fact_change
    where transaction >= (pg_snapshot_xmin(${stamp}::pg_snapshot)::text)::bigint
      and not pg_visible_in_snapshot(transaction::text::xid8, ${stamp}::pg_snapshot))`;
}

const CHANGED: Prepared = { name: 'facts-changed', text: `select ${factsChangedSql('$1')} as changed` };
