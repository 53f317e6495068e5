import type { ItemKind, ItemState } from '#libs/matching/src/index.js';
import type { EntityManager } from 'typeorm';
import type { CalibrationEntity } from '../calibration/calibration.entity.js';
import { entityOf } from '../platform/entity-of.js';
import { likeOf } from '../platform/like.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import { ItemEntity } from './item.entity.js';

export interface ItemFilter {
  kind?: ItemKind;
  state?: ItemState;
  /** Part of tag, name, model, serial number or place. */
  words?: string;
  /** Only tags after this one. */
  afterTag?: string;
  limit?: number;
}

/** What the standing of an item's calibrations follows from. */
export type CalibrationDates = Pick<CalibrationEntity, 'id' | 'replaces' | 'validFrom' | 'dueAt' | 'ranges'>;

/** What an item's line in the register is made from, apart from its own row. */
export interface ItemAroundInList {
  /** The latest first. */
  calibrations: CalibrationDates[];
  /** Whether it has a fault that is not closed. */
  openFault: boolean;
  fittedOn: { frameId: string; frameTag: string; role: string } | null;
}

/** An item with what its line is made from. */
export interface ItemInList extends ItemAroundInList {
  row: ItemEntity;
}

interface Row {
  row: Record<string, unknown>;
  calibrations: (Omit<CalibrationDates, 'validFrom' | 'dueAt'> & { validFrom: string; dueAt: string })[] | null;
  openFault: boolean;
  fittedOn: ItemAroundInList['fittedOn'];
}

/** Items by tag with what hangs on them, in one query and without readings and certificates. */
export async function readItemLines(manager: EntityManager, filter: ItemFilter): Promise<ItemInList[]> {
  const { kind, state, words, afterTag, limit } = filter;
  const values = [kind ?? null, state ?? null, afterTag ?? null, words ? likeOf(words) : null, limit ?? null];
  const rows = await prepared<Row>(manager, IN_LIST, values);
  return rows.map(({ row, calibrations, openFault, fittedOn }) => ({
    ...{ row: entityOf(manager, ItemEntity, row), openFault, fittedOn },
    calibrations: (calibrations ?? []).map(datesOf),
  }));
}

/** The register is small, so that conditions which are not asked for may stay in the plan. */
const IN_LIST: Prepared = {
  name: 'items-in-list',
  text: `
    select to_jsonb(item) as row,
      (select json_agg(json_build_object('id', calibration.id, 'replaces', calibration.replaces, 'validFrom', calibration.valid_from,
          'dueAt', calibration.due_at, 'ranges', calibration.ranges) 
          order by calibration.performed_at desc, calibration.entered_at desc)
        from calibration where calibration.item_id = item.id) as calibrations,
      exists (select 1 from fault where fault.item_id = item.id and fault.closed_at is null) as "openFault",
      (select json_build_object('frameId', link.frame_id, 'frameTag', frame.tag, 'role', link.role)
        from rig_link link join item frame on frame.id = link.frame_id where link.item_id = item.id) as "fittedOn"
    from (
      select * from item
      where ($1::text is null or kind = $1) and ($2::text is null or state = $2) and ($3::text is null or tag > $3)
        and ($4::text is null or tag ilike $4 or name ilike $4 or model ilike $4 or serial_number ilike $4 or place ilike $4)
      order by tag limit $5
    ) item order by item.tag`,
};

function datesOf({ validFrom, dueAt, ...rest }: NonNullable<Row['calibrations']>[number]): CalibrationDates {
  return { ...rest, validFrom: new Date(validFrom), dueAt: new Date(dueAt) };
}
