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
  const team = to.includes('team') ? [requesterId, ...(await membersOf(manager, teamId))] : [];
  const managers = to.includes('managers') ? await managersOf(manager) : [];
  const technician = to.includes('technician') ? [technicianId] : [];
  return [...new Set([...team, ...managers, ...technician])].filter((id) => id !== null);
}

async function membersOf(manager: EntityManager, teamId: string | null): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(
    `select person.id from person join team_member on team_member.person_id = person.id
     where team_member.team_id = $1 and 'requester' = any(person.roles)`,
    [teamId],
  );
  return rows.map(({ id }) => id);
}

export async function managersOf(manager: EntityManager): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(`select id from person where active and 'manager' = any(roles)`);
  return rows.map(({ id }) => id);
}
