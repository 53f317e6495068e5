import type { CurveReadingView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { ShiftCheckEntity } from '../calibration/shift-check.entity.js';
import { cachedMaterials, cachedMethods } from '../methods/cached-library.js';
import type { MaterialEntity } from '../methods/material.entity.js';
import type { MethodEntity } from '../methods/method.entity.js';
import { BookingEntity } from '../plan/plan.entity.js';
import { entityOf } from '../platform/entity-of.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import { ItemEntity } from '../register/item.entity.js';
import { RigLinkEntity } from '../register/rig.entity.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { RequestEntity } from '../requests/request.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';
import type { CurveEntity } from '../results/curve.entity.js';
import { ResultEntity } from '../results/result.entity.js';
import { benchNowOf, benchNowSql } from './read-bench-now.js';
import type { BenchNow, BenchNowRow } from './read-bench-now.js';
import { JobEntity } from './job.entity.js';
import { READING_KEY } from './job.repository.js';

/** A job with everything that the bench has to know of it, and what the bench goes by at that instant. */
export interface JobAtBench extends BenchNow {
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
  /** In their order. */
  specimens: SpecimenEntity[];
  /** The newest revision of each figure, in the order in which these were entered. */
  results: ResultEntity[];
  /** The newest of each specimen. */
  curves: CurveAtBench[];
  /** By specimen id, the curve file that is being read now or could not be read. */
  readings: ReadonlyMap<string, CurveReadingView>;
  /** The last shift check of the job's cell on its frame. */
  shiftCheck: ShiftCheckEntity | null;
  /** Names of people who did something on it. */
  people: Map<string, string>;
}

/** A curve without its points, of which the bench shows none. */
export type CurveAtBench = Pick<CurveEntity, 'id' | 'specimenId' | 'fileId' | 'rows'>;

type JsonRow = Record<string, unknown>;

interface Row extends BenchNowRow {
  job: JsonRow;
  request: JsonRow;
  batch: JsonRow;
  frame: JsonRow | null;
  booking: JsonRow | null;
  rig: JsonRow[];
  specimens: JsonRow[];
  results: JsonRow[];
  curves: CurveAtBench[];
  readings: (CurveReadingView & { specimenId: string })[];
  shiftCheck: JsonRow | null;
  people: { id: string; name: string }[];
}

/**
 * Reads a job with what stands around it in one statement, which sees one moment and costs one way to the database.
 *
 * @throws LabError `job/unknown`
 */
export async function readJobAtBench(manager: EntityManager, jobId: string, at: Date): Promise<JobAtBench> {
  const [row] = await prepared<Row>(manager, AT_BENCH, [jobId, at]);
  if (!row) throw new LabError('job/unknown', 'There is no such job.', { jobId });
  const batch = entityOf(manager, BatchEntity, row.batch);
  return {
    ...benchNowOf(row),
    batch,
    job: entityOf(manager, JobEntity, row.job),
    request: entityOf(manager, RequestEntity, row.request),
    method: (await cachedMethods(manager, [batch.methodId])).get(batch.methodId)!,
    material: (await cachedMaterials(manager, [batch.materialId])).get(batch.materialId ?? '') ?? null,
    frame: row.frame && entityOf(manager, ItemEntity, row.frame),
    booking: row.booking && entityOf(manager, BookingEntity, row.booking),
    rig: row.rig.map((json) => entityOf(manager, RigLinkEntity, json)),
    specimens: row.specimens.map((json) => entityOf(manager, SpecimenEntity, json)),
    results: row.results.map((json) => entityOf(manager, ResultEntity, json)),
    curves: row.curves,
    readings: new Map(row.readings.map(({ specimenId, ...reading }) => [specimenId, reading])),
    shiftCheck: row.shiftCheck && entityOf(manager, ShiftCheckEntity, row.shiftCheck),
    people: new Map(row.people.map(({ id, name }) => [id, name])),
  };
}

/** The cell of the train as taken, or as planned before that. */
const CELL = `
  select (link ->> 'itemId')::uuid
  from jsonb_array_elements(case when jsonb_array_length(job.train) > 0 then job.train else coalesce(booking.train, '[]') end) link
  where link ->> 'role' = 'load-cell' limit 1`;

const AT_BENCH: Prepared = {
  name: 'job-at-bench',
  text: `
    select to_jsonb(job) as job, to_jsonb(request) as request, to_jsonb(batch) as batch, to_jsonb(booking) as booking,
      to_jsonb(frame) as frame,
      (select coalesce(jsonb_agg(to_jsonb(link)), '[]') from rig_link link where link.frame_id = frame.id) as rig,
      (select coalesce(jsonb_agg(to_jsonb(specimen) order by position), '[]') from specimen where batch_id = batch.id) as specimens,
      (select coalesce(jsonb_agg(to_jsonb(newest) order by newest.entered_at, newest.key), '[]') from (
        select distinct on (result.specimen_id, result.key) result.* from result join specimen on specimen.id = result.specimen_id
        where specimen.batch_id = batch.id order by result.specimen_id, result.key, result.revision desc) newest) as results,
      (select coalesce(jsonb_agg(jsonb_build_object('id', newest.id, 'specimenId', newest.specimen_id, 'fileId', newest.file_id,
          'rows', newest.rows)), '[]') from (
        select distinct on (curve.specimen_id) curve.* from curve join specimen on specimen.id = curve.specimen_id
        where specimen.batch_id = batch.id order by curve.specimen_id, curve.revision desc) newest) as curves,
      (select coalesce(jsonb_agg(jsonb_build_object('specimenId', substr(newest.key, ${READING_KEY.length + 1}), 'taskId', newest.id, 'state', newest.state,
          'message', coalesce(newest.error, newest.message))), '[]') from (
        select distinct on (key) key, id, state, error, message from task_run
        where name = 'read-curves' and key = any(array(select '${READING_KEY}' || id from specimen where batch_id = batch.id))
        order by key, seq desc) newest where newest.state in ('waiting', 'running', 'failed')) as readings,
      (select to_jsonb(shift_check) from shift_check where frame_id = frame.id and cell_id = (${CELL})
        order by at desc limit 1) as "shiftCheck",
      (select coalesce(jsonb_agg(jsonb_build_object('id', person.id, 'name', person.name)), '[]') from person
        where id = job.technician_id or id = any(array(select (done ->> 'by')::uuid from jsonb_each(job.checks) as ticked (name, done)))
      ) as people,
      ${benchNowSql('job.technician_id', '$2::timestamptz')}
    from job join request on request.id = job.request_id join batch on batch.id = job.batch_id
      left join booking on booking.job_id = job.id and booking.live
      left join item frame on frame.id = coalesce(job.frame_id, booking.frame_id)
    where job.id = $1`,
};
