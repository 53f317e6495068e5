import type { EntityManager } from 'typeorm';
import { In } from 'typeorm';
import { ShiftCheckEntity } from '../calibration/shift-check.entity.js';
import { materialsKept, methodsKept } from '../methods/library-kept.js';
import type { MaterialEntity } from '../methods/material.entity.js';
import type { MethodEntity } from '../methods/method.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { BookingEntity } from '../plan/plan.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { RigLinkEntity } from '../register/rig.entity.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { RequestEntity } from '../requests/request.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';
import type { CurveEntity } from '../results/curve.entity.js';
import type { ResultEntity } from '../results/result.entity.js';
import { ResultRepository } from '../results/result.repository.js';
import type { JobEntity } from './job.entity.js';

/** A job with everything that the bench has to know of it. */
export interface JobAtBench {
  job: JobEntity;
  request: RequestEntity;
  batch: BatchEntity;
  method: MethodEntity;
  material: MaterialEntity | null;
  frame: ItemEntity | null;
  /** Of the published plan. */
  booking: BookingEntity | null;
  /** What hangs on the frame now. */
  rig: RigLinkEntity[];
  specimens: SpecimenEntity[];
  results: ResultEntity[];
  curves: CurveEntity[];
  /** The last shift check of the job's cell on its frame. */
  shiftCheck: ShiftCheckEntity | null;
  /** Names of people who did something on it. */
  people: Map<string, string>;
}

/** Reads a job with what stands around it, in a fixed number of queries. */
export async function jobAtBench(manager: EntityManager, job: JobEntity): Promise<JobAtBench> {
  const batch = await manager.findOneByOrFail(BatchEntity, { id: job.batchId });
  const booking = await manager.findOneBy(BookingEntity, { jobId: job.id, live: true });
  const frameId = job.frameId ?? booking?.frameId ?? null;
  const specimens = await manager.find(SpecimenEntity, { where: { batchId: batch.id }, order: { position: 'ASC' } });
  const results = new ResultRepository(manager);
  const cellId = (job.train.length > 0 ? job.train : (booking?.train ?? [])).find(
    ({ role }) => role === 'load-cell',
  )?.itemId;
  const doers = [job.technicianId, ...Object.values(job.checks).map(({ by }) => by)].filter((id) => id !== null);
  const people = await manager.findBy(PersonEntity, { id: In([...new Set(doers)]) });
  return {
    job,
    batch,
    booking,
    specimens,
    request: await manager.findOneByOrFail(RequestEntity, { id: job.requestId }),
    method: (await methodsKept(manager, [batch.methodId])).get(batch.methodId)!,
    material: (await materialsKept(manager, [batch.materialId])).get(batch.materialId ?? '') ?? null,
    frame: frameId === null ? null : await manager.findOneBy(ItemEntity, { id: frameId }),
    rig: frameId === null ? [] : await manager.findBy(RigLinkEntity, { frameId }),
    results: await results.newestOf(specimens.map(({ id }) => id)),
    curves: await results.curvesOf(specimens.map(({ id }) => id)),
    shiftCheck: cellId === undefined || frameId === null ? null : await lastShiftCheck(manager, cellId, frameId),
    people: new Map(people.map(({ id, name }) => [id, name])),
  };
}

function lastShiftCheck(manager: EntityManager, cellId: string, frameId: string): Promise<ShiftCheckEntity | null> {
  return manager.findOne(ShiftCheckEntity, { where: { cellId, frameId }, order: { at: 'DESC' } });
}
