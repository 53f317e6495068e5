import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { MaterialEntity } from '../methods/material.entity.js';
import { MethodEntity } from '../methods/method.entity.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { JobRepository } from './job.repository.js';
import type { PlannedJob } from './job.repository.js';

/** A ready job of the plan with what it asks for. */
export interface PlannedWork extends PlannedJob {
  batch: BatchEntity;
  method: MethodEntity;
  material: MaterialEntity | null;
}

/** Ready jobs of the published plan in its order, in a fixed number of queries. */
export async function plannedWork(manager: EntityManager, frameId?: string): Promise<PlannedWork[]> {
  const planned = await new JobRepository(manager).planned(frameId);
  const batches = await manager.findBy(BatchEntity, { id: In(planned.map(({ job }) => job.batchId)) });
  const methods = await manager.findBy(MethodEntity, { id: In(batches.map(({ methodId }) => methodId)) });
  const materials = await manager.findBy(MaterialEntity, {
    id: In(batches.flatMap(({ materialId }) => materialId ?? [])),
  });
  return planned.flatMap((each) => {
    const batch = batches.find(({ id }) => id === each.job.batchId);
    const method = methods.find(({ id }) => id === batch?.methodId);
    const material = materials.find(({ id }) => id === batch?.materialId) ?? null;
    return batch && method ? [{ ...each, batch, method, material }] : [];
  });
}
