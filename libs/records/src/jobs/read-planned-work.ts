import type { EntityManager } from 'typeorm';
import type { MaterialEntity } from '../methods/material.entity.js';
import type { MethodEntity } from '../methods/method.entity.js';
import { cachedMaterials, cachedMethods } from '../methods/cached-library.js';
import type { BookingEntity } from '../plan/plan.entity.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import type { BatchEntity } from '../requests/batch.entity.js';
import type { JobEntity } from './job.entity.js';

/** A ready job of the plan with what it asks for. */
export interface PlannedWork {
  job: Pick<JobEntity, 'id' | 'reference' | 'state' | 'version' | 'releasedAt' | 'holdWhy'>;
  booking: Pick<BookingEntity, 'frameId' | 'train'>;
  batch: Pick<BatchEntity, 'id' | 'ask' | 'specimenCount'>;
  method: MethodEntity;
  material: MaterialEntity | null;
}

type Row = PlannedWork['job'] &
  PlannedWork['booking'] &
  Pick<BatchEntity, 'ask' | 'specimenCount' | 'methodId' | 'materialId'> & { batchId: string };

const PLANNED: Prepared = {
  name: 'planned-work',
  text: `
    select job.id, job.reference, job.state, job.version, job.released_at as "releasedAt", job.hold_why as "holdWhy",
      booking.frame_id as "frameId", booking.train, batch.id as "batchId", batch.ask, batch.specimen_count as "specimenCount",
      batch.method_id as "methodId", batch.material_id as "materialId"
    from booking join job on job.id = booking.job_id join batch on batch.id = job.batch_id
    where booking.live and booking.kind = 'job' and job.state = 'ready' and ($1::uuid is null or booking.frame_id = $1)
    order by booking.setup_at, booking.starts_at`,
};

/** Ready jobs of the published plan in its order: one query, and the library as it is kept. */
export async function readPlannedWork(manager: EntityManager, frameId?: string): Promise<PlannedWork[]> {
  const rows = await prepared<Row>(manager, PLANNED, [frameId ?? null]);
  const ids = rows.map(({ methodId }) => methodId);
  const methods = await cachedMethods(manager, ids);
  const materials = await cachedMaterials(
    manager,
    rows.map(({ materialId }) => materialId),
  );
  return rows.map(({ frameId: on, train, batchId, ask, specimenCount, methodId, materialId, ...job }) => ({
    job,
    booking: { frameId: on, train },
    batch: { id: batchId, ask, specimenCount },
    method: methods.get(methodId)!,
    material: materials.get(materialId ?? '') ?? null,
  }));
}
