import type { PersonRef } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';

export interface TouchedJob {
  id: string;
  reference: string;
  requestId: string;
  requestReference: string;
  finishedAt: Date | null;
  results: number;
}

export interface TouchedReport {
  id: string;
  number: string;
  revision: number;
  requestReference: string;
}

export interface UpcomingJob {
  itemId: string;
  jobId: string;
  reference: string;
  requestReference: string;
  startsAt: Date;
  endsAt: Date;
}

/** What an item touched, and what it is planned to touch. */
export class ImpactRepository {
  constructor(private readonly manager: EntityManager) {}

  /**
   * Jobs that ran in [from, to) with the item in their train or on it as their frame, and how many results each has. A job that was
   * blocked may have gone on with other items: what was found before names those that it was found on.
   */
  jobs(itemId: string, from: Date, to: Date): Promise<TouchedJob[]> {
    return this.manager.query(
      `select job.id, job.reference, job.request_id as "requestId", request.reference as "requestReference",
              job.finished_at as "finishedAt",
              (select count(*)::int from result
               where result.job_id = job.id and (result.basis -> 'items' is null or result.basis -> 'items' ? $1::text)) as results
       from job join request on request.id = job.request_id
       where (job.frame_id = $1::uuid or job.train @> jsonb_build_array(jsonb_build_object('itemId', $1::text))
           or exists (select 1 from result where result.job_id = job.id and result.basis -> 'items' ? $1::text))
         and job.started_at < $3 and coalesce(job.finished_at, 'infinity') >= $2
       order by job.started_at`,
      [itemId, from, to],
    );
  }

  reports(requestIds: readonly string[]): Promise<TouchedReport[]> {
    return this.manager.query(
      `select report.id, report.number, report.revision, request.reference as "requestReference"
       from report join request on request.id = report.request_id
       where report.request_id = any($1) order by report.number, report.revision`,
      [requestIds],
    );
  }

  /** Those who asked for these requests. */
  requesters(requestIds: readonly string[]): Promise<PersonRef[]> {
    return this.manager.query(
      `select distinct person.id, person.name from request join person on person.id = request.requester_id
       where request.id = any($1) order by person.name`,
      [requestIds],
    );
  }

  /** Planned jobs that hold these items, by start. */
  upcoming(itemIds: readonly string[], from: Date): Promise<UpcomingJob[]> {
    return this.manager.query(
      `select distinct held.item_id as "itemId", job.id as "jobId", job.reference,
              request.reference as "requestReference", booking.starts_at as "startsAt", booking.ends_at as "endsAt"
       from (select booking_id, item_id from booking_item where live
             union select id, frame_id from booking where live) held
       join booking on booking.id = held.booking_id join job on job.id = booking.job_id
       join request on request.id = job.request_id
       where held.item_id = any($1) and booking.ends_at > $2 order by "startsAt", job.reference`,
      [itemIds, from],
    );
  }
}
