import type { EntityManager } from 'typeorm';

/** A booking as a calendar shows it. */
export interface FeedBooking {
  id: string;
  kind: 'job' | 'calibration-visit';
  /** Null for a calibration visit. */
  jobId: string | null;
  jobReference: string | null;
  requestReference: string | null;
  title: string | null;
  frameTag: string | null;
  technician: string | null;
  /** Tags of the items that it holds besides the frame. */
  tags: string[];
  setupAt: Date;
  startsAt: Date;
  endsAt: Date;
  /** Version of the plan, which only ever rises. */
  planVersion: number;
}

/** Who or what a feed is of. */
export type FeedOf = { frameId: string } | { technicianId: string };

/** How far back a feed reaches. */
const BACK_DAYS = 7;

/** The bookings of the published plan for one frame or technician, oldest first. A job that was taken is with whoever took it. */
export function readFeedBookings(manager: EntityManager, of: FeedOf, now: Date): Promise<FeedBooking[]> {
  const clause = 'frameId' in of ? 'booking.frame_id = $1' : 'coalesce(job.technician_id, booking.technician_id) = $1';
  return manager.query(
    `select booking.id, booking.kind, job.id as "jobId", job.reference as "jobReference", request.reference as "requestReference",
       request.title, frame.tag as "frameTag", person.name as technician, booking.setup_at as "setupAt",
       booking.starts_at as "startsAt", booking.ends_at as "endsAt", plan.version as "planVersion",
       array(select item.tag from booking_item held join item on item.id = held.item_id
         where held.booking_id = booking.id and item.id is distinct from booking.frame_id order by item.tag) as tags
     from booking join plan on plan.id = booking.plan_id left join job on job.id = booking.job_id
       left join request on request.id = job.request_id left join item frame on frame.id = booking.frame_id
       left join person on person.id = coalesce(job.technician_id, booking.technician_id)
     where booking.live and booking.ends_at > $3::timestamptz - $2 * interval '1 day' and ${clause}
     order by booking.setup_at`,
    ['frameId' in of ? of.frameId : of.technicianId, BACK_DAYS, now],
  );
}
