import type { EntityManager } from 'typeorm';
import type { CalibrationEntity } from '../calibration/calibration.entity.js';

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

interface Row {
  id: string;
  calibrations: (Omit<CalibrationDates, 'validFrom' | 'dueAt'> & { validFrom: string; dueAt: string })[] | null;
  openFault: boolean;
  fittedOn: ItemAroundInList['fittedOn'];
}

/** What hangs on each of these items, in one query and without readings and certificates. */
export async function itemsInList(
  manager: EntityManager,
  itemIds: readonly string[],
): Promise<Map<string, ItemAroundInList>> {
  const rows = await manager.query<Row[]>(
    `select item.id,
       (select json_agg(json_build_object('id', calibration.id, 'replaces', calibration.replaces, 'validFrom', calibration.valid_from,
           'dueAt', calibration.due_at, 'ranges', calibration.ranges) order by calibration.performed_at desc)
         from calibration where calibration.item_id = item.id) as calibrations,
       exists (select 1 from fault where fault.item_id = item.id and fault.closed_at is null) as "openFault",
       (select json_build_object('frameId', link.frame_id, 'frameTag', frame.tag, 'role', link.role)
         from rig_link link join item frame on frame.id = link.frame_id where link.item_id = item.id) as "fittedOn"
     from item where item.id = any($1)`,
    [itemIds],
  );
  return new Map(
    rows.map(({ id, calibrations, openFault, fittedOn }) => [
      id,
      { calibrations: (calibrations ?? []).map(datesOf), openFault, fittedOn },
    ]),
  );
}

function datesOf({ validFrom, dueAt, ...rest }: NonNullable<Row['calibrations']>[number]): CalibrationDates {
  return { ...rest, validFrom: new Date(validFrom), dueAt: new Date(dueAt) };
}
