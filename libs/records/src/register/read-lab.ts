import { clipWindows } from '#libs/calendar/src/index.js';
import type { LabSettings } from '#libs/contract/src/index.js';
import type { Lab, Rig, Technician } from '#libs/matching/src/index.js';
import { MoreThan } from 'typeorm';
import type { DataSource, EntityManager } from 'typeorm';
import { CalibrationEntity } from '../calibration/calibration.entity.js';
import { AuthorisationEntity } from '../people/authorisation.entity.js';
import { closedDays } from '../people/closed-days.js';
import { labSettings } from '../people/lab-settings.repository.js';
import { PersonEntity } from '../people/person.entity.js';
import { RosterShiftEntity } from '../people/roster-shift.entity.js';
import { factsStamp } from '../platform/facts.js';
import { FaultEntity } from './fault.entity.js';
import { grouped } from '../platform/grouped.js';
import { itemOf, spanOf } from './item-mapping.js';
import { ItemWindowEntity } from './item-window.entity.js';
import { ItemEntity } from './item.entity.js';
import { RigLinkEntity } from './rig.entity.js';

/** The whole lab as matching sees it, with what else of it is rarely changed, and the stamp of the facts that it was read from. */
export interface LabAsRead {
  lab: Lab;
  settings: LabSettings;
  /** `YYYY-MM-DD` in the lab's time zone, in their order. */
  closedDays: readonly string[];
  stamp: string;
}

/** Reads the whole lab in one consistent look. */
export function readLab(records: DataSource, nowMs: number): Promise<LabAsRead> {
  return records.transaction('REPEATABLE READ', async (manager) => ({
    stamp: await factsStamp(manager),
    lab: await labOf(manager, nowMs),
    settings: await labSettings(manager),
    closedDays: await closedDays(manager),
  }));
}

/** The lab within the caller's transaction. Roster and authorisations are read from now on; what is over does not matter. */
export async function labOf(manager: EntityManager, nowMs: number): Promise<Lab> {
  return {
    items: await itemsOf(manager),
    rigs: await rigsOf(manager),
    technicians: await techniciansOf(manager, nowMs),
  };
}

async function itemsOf(manager: EntityManager): Promise<Lab['items']> {
  const rows = await manager.find(ItemEntity, { order: { tag: 'ASC' } });
  const calibrations = grouped(await manager.find(CalibrationEntity), ({ itemId }) => itemId);
  const faults = grouped(await manager.find(FaultEntity), ({ itemId }) => itemId);
  const windows = grouped(await manager.find(ItemWindowEntity), ({ itemId }) => itemId);
  return rows.map((row) =>
    itemOf(row, calibrations.get(row.id) ?? [], faults.get(row.id) ?? [], windows.get(row.id) ?? []),
  );
}

/** A chamber on a frame is at the temperature of the last job there, or at room temperature when none ran. */
async function rigsOf(manager: EntityManager): Promise<Rig[]> {
  const links = await manager.find(RigLinkEntity, { order: { frameId: 'ASC', itemId: 'ASC' } });
  const warm = await manager.query<{ frameId: string; chamberC: number | null }[]>(
    `select distinct on (job.frame_id) job.frame_id as "frameId", (batch.ask ->> 'temperatureC')::float as "chamberC"
     from job join batch on batch.id = job.batch_id
     where job.started_at is not null and job.frame_id is not null order by job.frame_id, job.started_at desc`,
  );
  const chambers = await manager.findBy(ItemEntity, { kind: 'chamber' });
  return [...grouped(links, ({ frameId }) => frameId)].map(([frameId, fitted]) => {
    const itemIds = fitted.map(({ itemId }) => itemId);
    const heated = chambers.some(({ id }) => itemIds.includes(id));
    const last = warm.find((row) => row.frameId === frameId)?.chamberC ?? null;
    return { frameId, itemIds, chamberC: heated ? (last ?? ROOM_C) : null };
  });
}

const ROOM_C = 23;

/** Each person once per span of authorisation, at work within it: leave that begins next week helps nobody today. */
async function techniciansOf(manager: EntityManager, nowMs: number): Promise<Technician[]> {
  const shifts = await manager.findBy(RosterShiftEntity, { endsAt: MoreThan(new Date(nowMs)) });
  const people = await manager.findBy(PersonEntity, { active: true });
  const granted = await manager.find(AuthorisationEntity, { order: { methodCode: 'ASC' } });
  return people
    .filter(({ roles }) => roles.includes('technician'))
    .flatMap(({ id }) => {
      const windows = shifts.filter(({ personId }) => personId === id).map(spanOf);
      const own = granted.filter(({ personId }) => personId === id);
      const spans = grouped(own, ({ fromAt, toAt }) => `${fromAt.getTime()}-${toAt?.getTime() ?? ''}`);
      return [...spans.values()].map((alike) => ({
        id,
        methodIds: alike.map(({ methodCode }) => methodCode),
        windows: clipWindows(windows, alike[0]!.fromAt.getTime(), alike[0]!.toAt?.getTime() ?? Infinity),
      }));
    });
}
