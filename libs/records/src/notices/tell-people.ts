import type { EntityManager } from 'typeorm';
import { OF_THE_LAB_SQL, seesTeamSql } from '../people/sees.js';
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
  await giveNotices(manager, event.at, { to, key: eventId, kind: event.kind, path: around.path, ...words });
}

/** Whom a rule means, as people and teams are now: who has left a team or the lab since is not among them. */
async function audienceOf(manager: EntityManager, { to }: NoticeRule, around: Around): Promise<string[]> {
  const { teamId, requesterId, technicianId } = around;
  const rows = await manager.query<{ id: string }[]>(
    `select id from person
     where ($1 and 'manager' = any(roles))
       or (id = $2 and ${OF_THE_LAB_SQL})
       or ((id = $3 or 'requester' = any(roles) and id in (select person_id from team_member where team_id = $4))
         and ${seesTeamSql('$4')})`,
    [
      to.includes('managers'),
      to.includes('technician') ? technicianId : null,
      ...(to.includes('team') ? [requesterId, teamId] : [null, null]),
    ],
  );
  return rows.map(({ id }) => id);
}

export async function managersOf(manager: EntityManager): Promise<string[]> {
  const rows = await manager.query<{ id: string }[]>(`select id from person where active and 'manager' = any(roles)`);
  return rows.map(({ id }) => id);
}
