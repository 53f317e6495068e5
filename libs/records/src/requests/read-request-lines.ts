import type { PersonRef, RequestState, TeamRef } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import type { JobEntity } from '../jobs/job.entity.js';
import type { BookingEntity } from '../plan/plan.entity.js';
import { likeOf } from '../platform/like.js';
import { prepared } from '../platform/prepared.js';
import type { RequestEntity } from './request.entity.js';

export interface RequestFilter {
  /** Only of these teams; absent means of all. */
  teamIds?: readonly string[];
  states?: readonly RequestState[];
  requesterId?: string;
  /** Part of reference or title. */
  words?: string;
  /** Only requests made before this one, which was the last of the page before. */
  after?: { createdAt: Date; id: string };
  limit: number;
}

/** What a request's line in a list is made from, and no more. */
export interface RequestInList {
  request: Pick<
    RequestEntity,
    'id' | 'reference' | 'title' | 'state' | 'createdAt' | 'dueAt' | 'promise50At' | 'promise80At'
  >;
  team: TeamRef;
  requester: PersonRef;
  /** In their order. */
  batches: { designation: string; specimenCount: number }[];
  /** By reference. */
  jobs: JobInList[];
  /** Specimens that are still to come; counted only while the request waits for them. */
  missing: number;
}

/** A job with its place in the plan, as far as there is one. */
export interface JobInList {
  job: Pick<JobEntity, 'reference' | 'state' | 'why' | 'holdWhy' | 'releasedAt'>;
  booking: Pick<BookingEntity, 'startsAt' | 'endsAt'> | null;
  frameTag: string | null;
}

interface Row {
  id: string;
  reference: string;
  title: string;
  state: RequestState;
  createdAt: Date;
  dueAt: Date | null;
  promise50At: Date | null;
  promise80At: Date | null;
  teamId: string;
  team: string;
  requesterId: string;
  requester: string;
  batches: RequestInList['batches'] | null;
  jobs: JobRow[] | null;
  missing: number;
}

/** Instants within JSON come as text. */
interface JobRow extends Pick<JobEntity, 'reference' | 'state' | 'why' | 'holdWhy'> {
  releasedAt: string | null;
  startsAt: string | null;
  endsAt: string | null;
  frameTag: string | null;
}

/**
 * Requests for a list, newest first, in one query. Lists are read all day long, and whole rows of everything around a request would
 * cost many times as much. The page is cut first, so that only its own requests are looked up.
 */
export async function readRequestLines(manager: EntityManager, filter: RequestFilter): Promise<RequestInList[]> {
  const { text, values, name } = linesFor(filter);
  const rows =
    name === null ? await manager.query<Row[]>(text, values) : await prepared<Row>(manager, { name, text }, values);
  return rows.map(lineOf);
}

interface Condition {
  value: unknown;
  holds: (parameter: string) => string;
  /** For the name of a statement that is good for every value; null where the best plan depends on the value. */
  name: string | null;
}

/** Each set of conditions is a statement of its own, so that each has a plan of its own. */
function linesFor(filter: RequestFilter): { text: string; values: unknown[]; name: string | null } {
  const { after, limit } = filter;
  const filters = conditionsOf(filter);
  const values = filters.map(({ value }) => value);
  const conditions = filters.map(({ holds }, at) => holds(`$${at + 1}`));
  if (after) {
    conditions.push(`(created_at, id) < ($${values.length + 1}::timestamptz, $${values.length + 2}::uuid)`);
    values.push(after.createdAt, after.id);
  }
  const names = ['request-lines', String(limit), ...filters.map(({ name }) => name), ...(after ? ['after'] : [])];
  return { text: linesSql(conditions, limit), values, name: names.includes(null) ? null : names.join(' ') };
}

function conditionsOf({ teamIds, states, requesterId, words }: RequestFilter): Condition[] {
  const conditions: Condition[] = [];
  const among = (column: string, type: string, values: readonly string[]) =>
    conditions.push(
      values.length === 1
        ? { name: column, value: values[0], holds: (of) => `${column} = ${of}::${type}` }
        : { name: null, value: values, holds: (of) => `${column} = any(${of}::${type}[])` },
    );
  if (teamIds) among('team_id', 'uuid', teamIds);
  if (states) among('state', 'text', states);
  if (requesterId) among('requester_id', 'uuid', [requesterId]);
  if (words) {
    const holds = (of: string) => `(reference ilike ${of} or title ilike ${of})`;
    conditions.push({ name: null, value: likeOf(words), holds });
  }
  return conditions;
}

function linesSql(conditions: readonly string[], limit: number): string {
  return `
  select request.id, request.reference, request.title, request.state, request.created_at as "createdAt", request.due_at as "dueAt",
    request.promise50_at as "promise50At", request.promise80_at as "promise80At",
    team.id as "teamId", team.name as team, person.id as "requesterId", person.name as requester,
    (select json_agg(json_build_object('designation', method.designation, 'specimenCount', batch.specimen_count) order by batch.position)
      from batch join method on method.id = batch.method_id where batch.request_id = request.id) as batches,
    (select json_agg(json_build_object('reference', job.reference, 'state', job.state, 'why', job.why, 'holdWhy', job.hold_why,
        'releasedAt', job.released_at, 'startsAt', booking.starts_at, 'endsAt', booking.ends_at, 'frameTag', frame.tag) order by job.reference)
      from job left join booking on booking.job_id = job.id and booking.live
        left join item frame on frame.id = coalesce(job.frame_id, booking.frame_id)
      where job.request_id = request.id) as jobs,
    case when request.state in ('accepted', 'in-work') then (select count(*)::int from batch join specimen on specimen.batch_id = batch.id
      where batch.request_id = request.id and specimen.fate = 'expected' and specimen.arrived_at is null) else 0 end as missing
  from (
    select * from request
    ${conditions.length > 0 ? `where ${conditions.join(' and ')}` : ''}
    order by created_at desc, id desc limit ${Math.trunc(limit)}
  ) request join team on team.id = request.team_id join person on person.id = request.requester_id
  order by request.created_at desc, request.id desc`;
}

function lineOf({ teamId, team, requesterId, requester, batches, jobs, missing, ...request }: Row): RequestInList {
  return {
    request,
    team: { id: teamId, name: team },
    requester: { id: requesterId, name: requester },
    batches: batches ?? [],
    jobs: (jobs ?? []).map(jobOf),
    missing,
  };
}

function jobOf({ releasedAt, startsAt, endsAt, frameTag, ...job }: JobRow): JobInList {
  return {
    job: { ...job, releasedAt: releasedAt === null ? null : new Date(releasedAt) },
    booking: startsAt === null || endsAt === null ? null : { startsAt: new Date(startsAt), endsAt: new Date(endsAt) },
    frameTag,
  };
}
