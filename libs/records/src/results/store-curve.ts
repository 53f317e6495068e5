import { LabError } from '#libs/errors/src/index.js';
import type { CurveFormat } from '#libs/reduction/src/index.js';
import { StoredFileEntity } from '../exchange/stored-file.entity.js';
import { updateRows } from '../platform/write-rows.js';
import type { Act } from '../record/act.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';
import { itemsOfTrain, JobEntity } from '../jobs/job.entity.js';
import type { ResultBasis } from './result.entity.js';
import { ResultRepository } from './result.repository.js';

export interface ReadCurve {
  fileId: string;
  jobId: string;
  specimenId: string;
  byId: string;
  /** Of the file. */
  sha256: string;
  format: CurveFormat;
  rows: number;
  drawn: Record<string, number[]>;
  results: readonly { key: string; value: number; unit: string; basis: ResultBasis }[];
}

/** Keeps a curve that was read with the results that rest on it, and the specimen is tested. Figures that were there get a next revision. */
export async function storeCurve({ manager, record, tell, now }: Act, read: ReadCurve): Promise<void> {
  const { fileId, jobId, specimenId, byId, format, rows, drawn } = read;
  const specimen = await manager.findOne(SpecimenEntity, {
    where: { id: specimenId },
    lock: { mode: 'for_no_key_update' },
  });
  if (!specimen) throw new LabError('specimen/unknown', 'There is no such specimen.', { specimenId });
  const repository = new ResultRepository(manager);
  const [before] = await repository.curvesOf([specimenId]);
  const same = before ? await manager.existsBy(StoredFileEntity, { id: before.fileId, sha256: read.sha256 }) : false;
  if (!same)
    await repository.addCurve({ specimenId, jobId, fileId, format, rows, drawn, uploadedBy: byId, uploadedAt: now() });
  const why = before ? 'Read from the curve again' : null;
  const job = await manager.findOneByOrFail(JobEntity, { id: jobId });
  const about = { specimenId, jobId, origin: 'reduced' as const, why, enteredBy: byId };
  const items = itemsOfTrain(job);
  const stored = await repository.add(
    read.results.map(({ basis, ...result }) => ({ ...result, ...about, basis: { ...basis, items } })),
    now(),
  );
  if (specimen.fate === 'expected' || specimen.fate === 'arrived') {
    await updateRows(manager, SpecimenEntity, { id: specimenId, version: specimen.version }, { fate: 'tested' });
  }
  await record({
    kind: 'specimen/curve-reduced',
    subjectId: jobId,
    actorId: byId,
    after: {
      ...{ specimenId, label: specimen.label, fileId, sha256: read.sha256, rows },
      results: stored.map(({ key, value, unit, revision }) => ({ key, value, unit, revision })),
    },
    why,
  });
  await tell('results', job.requestId);
}
