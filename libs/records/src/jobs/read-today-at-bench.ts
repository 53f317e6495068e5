import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import type { PersonRef } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import type { BookingEntity } from '../plan/plan.entity.js';
import { prepared, wordsSql } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import type { JobEntity } from './job.entity.js';
import { ON_A_FRAME } from './job.repository.js';

/** A job as the bench lists it. */
export interface JobToday {
  job: Pick<JobEntity, 'id' | 'reference' | 'state' | 'technicianId' | 'takenAt'>;
  /** Its place in the published plan. */
  booking: Pick<BookingEntity, 'setupAt' | 'startsAt' | 'endsAt' | 'changeoverMin'> | null;
  title: string;
  requestReference: string;
  frameTag: string | null;
  technician: PersonRef | null;
  /** Whether its time in the plan touches the next 24 h, or it is on a frame. */
  isToday: boolean;
}

type Row = JobToday['job'] & {
  setupAt: Date | null;
  startsAt: Date;
  endsAt: Date;
  changeoverMin: number;
  title: string;
  label: string;
  requestReference: string;
  frameTag: string | null;
  technician: string | null;
};

/** Jobs on frames, and the ready ones of the plan, by when they begin; in one query. */
export async function readTodayAtBench(manager: EntityManager, now: Date): Promise<JobToday[]> {
  const rows = await prepared<Row>(manager, TODAY, []);
  return rows
    .map((row) => jobToday(row, now))
    .sort((a, b) => beginOf(a) - beginOf(b) || (a.job.reference < b.job.reference ? -1 : 1));
}

/** Both kinds are found by their own index and put together: with `or` the whole table would be read. */
const TODAY: Prepared = {
  name: 'today-at-bench',
  text: `
  select job.id, job.reference, job.state, job.technician_id as "technicianId", job.taken_at as "takenAt",
    booking.setup_at as "setupAt", booking.starts_at as "startsAt", booking.ends_at as "endsAt",
    booking.changeover_min as "changeoverMin", request.title, request.reference as "requestReference", batch.label,
    frame.tag as "frameTag", person.name as technician
  from (
    select job_id as id from booking where live and kind = 'job' and job_id is not null
    union select id from job where state = any(${wordsSql(ON_A_FRAME)})
  ) wanted join job on job.id = wanted.id join request on request.id = job.request_id join batch on batch.id = job.batch_id
    left join booking on booking.job_id = job.id and booking.live and booking.kind = 'job'
    left join item frame on frame.id = coalesce(job.frame_id, booking.frame_id)
    left join person on person.id = job.technician_id`,
};

function jobToday(
  { setupAt, startsAt, endsAt, changeoverMin, title, label, requestReference, frameTag, technician, ...job }: Row,
  now: Date,
): JobToday {
  const booking = setupAt && { setupAt, startsAt, endsAt, changeoverMin };
  return {
    ...{ job, booking, requestReference, frameTag },
    title: label ? `${title}: ${label}` : title,
    technician: job.technicianId === null ? null : { id: job.technicianId, name: technician ?? '' },
    isToday:
      isOnFrame(job) ||
      (booking !== null && booking.setupAt.getTime() < now.getTime() + MS_PER_DAY && booking.endsAt > now),
  };
}

function isOnFrame({ state }: JobToday['job']): boolean {
  return (ON_A_FRAME as readonly string[]).includes(state);
}

function beginOf({ booking, job }: JobToday): number {
  return (booking?.setupAt ?? job.takenAt)?.getTime() ?? 0;
}
