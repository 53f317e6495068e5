import type { LabSettings, PersonRef, RequestView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import type { JobEntity } from '../jobs/job.entity.js';
import type { MethodEntity } from '../methods/method.entity.js';
import { withDefaults } from '../people/lab-settings.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import type { BatchEntity } from './batch.entity.js';
import type { RequestEntity } from './request.entity.js';
import type { JobInList, RequestInList } from './read-request-lines.js';
import type { SpecimenEntity } from './specimen.entity.js';

/** What a whole request is shown from, and no more. */
export interface RequestWhole extends Omit<RequestInList, 'request' | 'batches' | 'jobs' | 'missing'> {
  request: RequestEntity;
  /** In their order. */
  batches: BatchInWhole[];
  /** By reference. */
  jobs: JobInWhole[];
  /** In the order in which they were written. */
  messages: { id: string; author: PersonRef; body: string; at: Date }[];
  /** By number and revision. */
  reports: RequestView['reports'];
  /** Who reviewed it; null while nobody has. */
  reviewer: PersonRef | null;
  /** In which zone the lab tells instants. */
  timeZone: string;
}

export interface BatchInWhole {
  batch: Pick<BatchEntity, 'id' | 'position' | 'label' | 'specimenCount' | 'ask' | 'asTyped'>;
  method: Pick<MethodEntity, 'id' | 'code' | 'version' | 'designation' | 'title' | 'testType'>;
  material: { id: string; name: string } | null;
  /** In their order. */
  specimens: Omit<SpecimenEntity, 'batchId'>[];
}

export interface JobInWhole extends JobInList {
  job: JobInList['job'] & Pick<JobEntity, 'id' | 'batchId' | 'startedAt' | 'finishedAt'>;
}

/** Instants within JSON come as text. */
type AsJson<Of> = {
  [Key in keyof Of]: Of[Key] extends Date ? string : Of[Key] extends Date | null ? string | null : Of[Key];
};

interface Row extends RequestEntity {
  team: string;
  requester: string;
  reviewerId: string | null;
  reviewer: string | null;
  settings: Partial<LabSettings> | null;
  batchRows:
    (Omit<BatchInWhole, 'specimens'> & { specimens: AsJson<BatchInWhole['specimens'][number]>[] | null })[] | null;
  jobRows:
    | { job: AsJson<JobInWhole['job']>; startsAt: string | null; endsAt: string | null; frameTag: string | null }[]
    | null;
  messageRows: AsJson<RequestWhole['messages'][number]>[] | null;
  reportRows: RequestView['reports'] | null;
}

/**
 * A request with all that is shown of it, in one query: each query costs the server as much as the answer's whole making.
 *
 * @param teamIds teams whose requests may be seen; absent means all
 * @throws LabError `request/unknown`, also for a request that may not be seen
 */
export async function readRequest(
  manager: EntityManager,
  id: string,
  teamIds?: readonly string[],
): Promise<RequestWhole> {
  const [row] = await prepared<Row>(manager, WHOLE, [id, teamIds ?? null]);
  if (!row) throw new LabError('request/unknown', 'There is no such request.', { requestId: id });
  const { team, requester, reviewerId, reviewer, settings, batchRows, jobRows, messageRows, reportRows, ...request } =
    row;
  return {
    request,
    team: { id: request.teamId, name: team },
    requester: { id: request.requesterId, name: requester },
    reviewer: reviewerId === null ? null : { id: reviewerId, name: reviewer ?? '' },
    batches: (batchRows ?? []).map(({ specimens, ...batch }) => ({
      ...batch,
      specimens: (specimens ?? []).map(specimenOf),
    })),
    jobs: (jobRows ?? []).map(jobOf),
    messages: (messageRows ?? []).map((message) => ({ ...message, at: new Date(message.at) })),
    reports: reportRows ?? [],
    timeZone: withDefaults(settings).timeZone,
  };
}

const WHOLE: Prepared = {
  name: 'request-whole',
  text: `
  select request.id, request.reference, request.title, request.purpose, request.state, request.team_id as "teamId",
    request.requester_id as "requesterId", request.due_at as "dueAt", request.specimens_at as "specimensAt", request.weight,
    request.disposal, request.conformity, request.review, request.created_at as "createdAt", request.submitted_at as "submittedAt",
    request.accepted_at as "acceptedAt", request.promise50_at as "promise50At", request.promise80_at as "promise80At",
    request.promise_note as "promiseNote", request.imported_as as "importedAs", request.version, team.name as team, person.name as requester,
    request.review ->> 'byId' as "reviewerId", (select name from person where id = (request.review ->> 'byId')::uuid) as reviewer,
    (select settings from lab_setting where id = 1) as settings,
    (select json_agg(json_build_object(
        'batch', json_build_object('id', batch.id, 'position', batch.position, 'label', batch.label,
          'specimenCount', batch.specimen_count, 'ask', batch.ask, 'asTyped', batch.as_typed),
        'method', json_build_object('id', method.id, 'code', method.code, 'version', method.version,
          'designation', method.designation, 'title', method.title, 'testType', method.test_type),
        'material', case when material.id is null then null else json_build_object('id', material.id, 'name', material.name) end,
        'specimens', (select json_agg(json_build_object('id', specimen.id, 'label', specimen.label, 'position', specimen.position,
            'fate', specimen.fate, 'invalidWhy', specimen.invalid_why, 'arrivedAt', specimen.arrived_at,
            'condition', specimen.condition, 'conditioningFrom', specimen.conditioning_from,
            'dimensions', specimen.dimensions, 'version', specimen.version) order by specimen.position)
          from specimen where specimen.batch_id = batch.id)) order by batch.position)
      from batch join method on method.id = batch.method_id left join material on material.id = batch.material_id
      where batch.request_id = request.id) as "batchRows",
    (select json_agg(json_build_object(
        'job', json_build_object('id', job.id, 'batchId', job.batch_id, 'reference', job.reference, 'state', job.state, 'why', job.why,
          'holdWhy', job.hold_why, 'releasedAt', job.released_at, 'startedAt', job.started_at, 'finishedAt', job.finished_at),
        'startsAt', booking.starts_at, 'endsAt', booking.ends_at, 'frameTag', frame.tag) order by job.reference)
      from job left join booking on booking.job_id = job.id and booking.live
        left join item frame on frame.id = coalesce(job.frame_id, booking.frame_id)
      where job.request_id = request.id) as "jobRows",
    (select json_agg(json_build_object('id', message.id, 'author', json_build_object('id', author.id, 'name', author.name),
        'body', message.body, 'at', message.at) order by message.at, message.id)
      from request_message message join person author on author.id = message.author_id
      where message.request_id = request.id) as "messageRows",
    (select json_agg(json_build_object('id', report.id, 'number', report.number, 'revision', report.revision, 'state', report.state)
        order by report.number, report.revision)
      from report where report.request_id = request.id) as "reportRows"
  from request join team on team.id = request.team_id join person on person.id = request.requester_id
  where request.id = $1 and ($2::uuid[] is null or request.team_id = any($2))`,
};

function specimenOf(row: AsJson<BatchInWhole['specimens'][number]>): BatchInWhole['specimens'][number] {
  return { ...row, arrivedAt: instantOf(row.arrivedAt), conditioningFrom: instantOf(row.conditioningFrom) };
}

function jobOf({ job, startsAt, endsAt, frameTag }: NonNullable<Row['jobRows']>[number]): JobInWhole {
  const { releasedAt, startedAt, finishedAt } = job;
  const instants = {
    releasedAt: instantOf(releasedAt),
    startedAt: instantOf(startedAt),
    finishedAt: instantOf(finishedAt),
  };
  const booking =
    startsAt === null || endsAt === null ? null : { startsAt: new Date(startsAt), endsAt: new Date(endsAt) };
  return { job: { ...job, ...instants }, booking, frameTag };
}

function instantOf(text: string | null): Date | null {
  return text === null ? null : new Date(text);
}
