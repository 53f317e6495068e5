import type { EntityManager } from 'typeorm';
import type { Around } from './notice-rules.js';

type Look = (manager: EntityManager, id: string) => Promise<Around | null>;

const REQUEST = `request.title, request.team_id as "teamId", request.requester_id as "requesterId"`;

/** By the kind of subject, how its names are found. */
const LOOKS: Record<string, Look> = {
  request: one(`select request.reference, ${REQUEST}, '/requests/' || request.id as path, null as "technicianId"
    from request where request.id = $1::uuid`),
  job: one(`select job.reference, ${REQUEST}, '/bench/' || job.id as path,
      (select taken.actor_id from record_event taken where taken.subject_kind = 'job' and taken.subject_id = job.id::text
        and taken.kind = 'job/taken' order by taken.at desc limit 1) as "technicianId"
    from job join request on request.id = job.request_id where job.id = $1::uuid`),
  report: one(`select report.number as reference, ${REQUEST}, '/reports/' || report.id as path, null as "technicianId"
    from report join request on request.id = report.request_id where report.id = $1::uuid`),
  item: one(`select item.tag as reference, item.name as title, '/register/items/' || item.id as path,
    null as "teamId", null as "requesterId", null as "technicianId" from item where item.id = $1::uuid`),
  nonconformity:
    one(`select found.reference, item.tag || ' ' || item.name as title, '/register/nonconformities' as path,
      null as "teamId", null as "requesterId", null as "technicianId"
    from nonconformity found join item on item.id = found.item_id where found.id = $1::uuid`),
};

/** What the words of a notice need to know of a subject; null for one that nobody is told of. */
export async function aroundEvent(manager: EntityManager, subjectKind: string, id: string): Promise<Around | null> {
  return (await LOOKS[subjectKind]?.(manager, id)) ?? null;
}

function one(statement: string): Look {
  return async (manager, id) => (await manager.query<Around[]>(statement, [id]))[0] ?? null;
}
