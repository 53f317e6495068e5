import { In, Not } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { CalibrationEntity } from '../calibration/calibration.entity.js';
import { itemsOfTrain, JobEntity } from '../jobs/job.entity.js';
import { cachedMaterials, cachedMethods } from '../methods/cached-library.js';
import type { MaterialEntity } from '../methods/material.entity.js';
import type { MethodEntity } from '../methods/method.entity.js';
import { lastOfEach } from '../platform/grouped.js';
import { PersonEntity } from '../people/person.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';
import { StoredFileEntity } from '../exchange/stored-file.entity.js';
import { CurveEntity } from './curve.entity.js';
import { ResultEntity } from './result.entity.js';

/** A batch with everything that was found on it, and what it was found with. */
export interface BatchFound {
  batch: BatchEntity;
  method: MethodEntity;
  material: MaterialEntity | null;
  specimens: SpecimenEntity[];
  /** The newest revision of each figure. */
  results: ResultEntity[];
  /** The newest curve of each specimen, with the name and hash of its file. */
  curves: (CurveEntity & { file: { name: string; sha256: string } | null })[];
  /** The job that ran it; an aborted one does not count. Null before there is one. */
  job: JobEntity | null;
  technician: string | null;
  /** Items of the job's train with the calibration that was in force when it ran; then what earlier figures were found on. */
  items: { role: string; item: ItemEntity; calibration: CalibrationEntity | null }[];
}

/** Everything found for a request, batch by batch, in a fixed number of queries. */
export async function resultsOfRequest(manager: EntityManager, requestId: string): Promise<BatchFound[]> {
  const batches = await manager.find(BatchEntity, { where: { requestId }, order: { position: 'ASC' } });
  return foundOf(manager, batches);
}

async function foundOf(manager: EntityManager, batches: readonly BatchEntity[]): Promise<BatchFound[]> {
  const batchId = In(batches.map(({ id }) => id));
  const specimens = await manager.find(SpecimenEntity, { where: { batchId }, order: { position: 'ASC' } });
  const specimenId = In(specimens.map(({ id }) => id));
  const results = await manager.find(ResultEntity, { where: { specimenId }, order: { revision: 'ASC' } });
  const curves = await manager.find(CurveEntity, { where: { specimenId }, order: { revision: 'ASC' } });
  const jobs = await manager.find(JobEntity, { where: { batchId, state: Not('aborted') } });
  const methods = await cachedMethods(
    manager,
    batches.map(({ methodId }) => methodId),
  );
  const materials = await cachedMaterials(
    manager,
    batches.map(({ materialId }) => materialId),
  );
  const people = await manager.findBy(PersonEntity, { id: In(jobs.flatMap((job) => job.technicianId ?? [])) });
  const files = await manager.findBy(StoredFileEntity, { id: In(curves.map(({ fileId }) => fileId)) });
  const train = await trainsOf(manager, jobs, results);
  return batches.map((batch) => {
    const own = specimens.filter((specimen) => specimen.batchId === batch.id);
    const isOwn = (row: { specimenId: string }) => own.some(({ id }) => id === row.specimenId);
    const job = jobs.find((row) => row.batchId === batch.id) ?? null;
    return {
      batch,
      method: methods.get(batch.methodId)!,
      material: materials.get(batch.materialId ?? '') ?? null,
      specimens: own,
      results: lastOfEach(results.filter(isOwn), ({ specimenId: of, key }) => `${of} ${key}`),
      curves: lastOfEach(curves.filter(isOwn), ({ specimenId: of }) => of).map((curve) => ({
        ...curve,
        file: files.find(({ id }) => id === curve.fileId) ?? null,
      })),
      job,
      technician: people.find(({ id }) => id === job?.technicianId)?.name ?? null,
      items: job ? (train.get(job.id) ?? []) : [],
    };
  });
}

async function trainsOf(
  manager: EntityManager,
  jobs: readonly JobEntity[],
  results: readonly ResultEntity[],
): Promise<Map<string, BatchFound['items']>> {
  const used = jobs.flatMap((job) => itemsUsed(job, results).map((itemId) => ({ job, itemId })));
  const itemId = In(used.map((place) => place.itemId));
  const items = await manager.findBy(ItemEntity, { id: itemId });
  const calibrations = await manager.find(CalibrationEntity, {
    where: { itemId },
    order: { performedAt: 'ASC', enteredAt: 'ASC' },
  });
  const rows = used.flatMap(({ job, itemId: id }) => {
    const item = items.find((row) => row.id === id);
    if (!item) return [];
    const role = job.train.find((link) => link.itemId === id)?.role ?? item.kind;
    return [{ job, role, item, calibration: inForceAt(calibrations, id, testedAt(job, results)) }];
  });
  return new Map(
    jobs.map(({ id }) => [
      id,
      rows.filter(({ job }) => job.id === id).map(({ role, item, calibration }) => ({ role, item, calibration })),
    ]),
  );
}

/** What the job runs on, and after it what its figures were found on before it had to change. */
function itemsUsed(job: JobEntity, results: readonly ResultEntity[]): string[] {
  const named = results.filter(({ jobId }) => jobId === job.id).flatMap(({ basis }) => basis.items ?? []);
  return [...new Set([...itemsOfTrain(job), ...named])];
}

/** When a job was at work: a job that was given back keeps its figures, but not its start. */
function testedAt(job: JobEntity, results: readonly ResultEntity[]): Date | null {
  const entered = results.filter(({ jobId }) => jobId === job.id).map(({ enteredAt }) => enteredAt.getTime());
  return job.startedAt ?? (entered.length > 0 ? new Date(Math.max(...entered)) : job.takenAt);
}

/** The last calibration that had begun by then and was not yet due. */
function inForceAt(
  calibrations: readonly CalibrationEntity[],
  itemId: string,
  at: Date | null,
): CalibrationEntity | null {
  if (at === null) return null;
  return calibrations.filter((row) => row.itemId === itemId && row.validFrom <= at && at < row.dueAt).at(-1) ?? null;
}
