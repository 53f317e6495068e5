import type { EntityManager } from 'typeorm';
import type { RecordEntry } from '../record/append.js';
import { aroundEvent } from './around-event.js';
import { giveNotices } from './give-notices.js';
import { NOTICE_RULES } from './notice-rules.js';
import type { Around, NoticeRule } from './notice-rules.js';

/** Tells those concerned of an event, in its transaction; never the one who did it. */
export async function tellPeople(manager: EntityManager, eventId: string, event: RecordEntry): Promise<void> {
  const rule = NOTICE_RULES[event.kind];
  if (!rule || rule.when?.(event) === false) return;
  const around = await aroundEvent(manager, event.subjectKind, event.subjectId);
  if (!around) return;
  const all = await audienceOf(manager, rule, around);
  const to = all.filter((id) => id !== event.actorId);
  const words = { subject: `${around.reference} ${rule.verb}`, sentence: rule.sentence(around, event) };
  await giveNotices(manager, { to, key: eventId, kind: event.kind, path: around.path, ...words });
}

async function audienceOf(manager: EntityManager, { to }: NoticeRule, around: Around): Promise<string[]> {
  const { teamId, requesterId, technicianId } = around;
  const named = [to.includes('team') ? requesterId : null, to.includes('technician') ? technicianId : null];
  const rows = await manager.query<{ id: string }[]>(
    `select id from person
     where id = any($1::uuid[]) or ($2 and active and 'manager' = any(roles))
       or ('requester' = any(roles) and id in (select person_id from team_member where team_id = $3))`,
    [named.filter((id) => id !== null), to.includes('managers'), to.includes('team') ? teamId : null],
  );
  return rows.map(({ id }) => id);
}

export async function managersOf(manager: EntityManager): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(`select id from person where active and 'manager' = any(roles)`);
  return rows.map(({ id }) => id);
}
