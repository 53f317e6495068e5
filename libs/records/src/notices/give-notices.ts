import type { EntityManager } from 'typeorm';
import type { MailWay } from '#libs/contract/src/index.js';
import { addDays, instantAt, localDateAt } from '#libs/calendar/src/index.js';
import { labSettings } from '../people/lab-settings.repository.js';
import { notifyAll } from '../platform/live-events.js';
import { announce } from '../tasks/announce.js';

export interface NewNotice {
  /** Ids of people; who has left is not told. */
  to: readonly string[];
  /** What it tells of: the same person is not told of the same key again. */
  key: string;
  kind: string;
  path: string;
  subject: string;
  sentence: string;
}

/** What somebody who never chose gets. */
export const DEFAULT_MAIL: MailWay = 'at-once';

/** When the daily mail goes out, by the lab's clock. */
const DAILY_AT = '06:30';

/** Puts a notice before people, tells their open pages, and announces the mails that they want of it. */
export async function giveNotices(manager: EntityManager, at: Date, { to, ...notice }: NewNotice): Promise<void> {
  if (to.length === 0) return;
  const given = await manager.query<{ id: string; personId: string; mail: MailWay }[]>(
    `with given as (
       insert into notice (id, person_id, key, kind, path, subject, sentence, at)
       select gen_random_uuid(), person.id, $2, $3, $4, $5, $6, $8 from person where person.id = any($1) and person.active
       on conflict (person_id, key) do nothing returning id, person_id)
     select given.id, given.person_id as "personId", coalesce(person.notices->>'mail', $7) as mail
     from given join person on person.id = given.person_id`,
    [to, notice.key, notice.kind, notice.path, notice.subject, notice.sentence, DEFAULT_MAIL, at],
  );
  await notifyAll(
    manager,
    given.map(({ personId }) => ({ topic: 'notices', id: personId })),
  );
  const noticeIds = given.filter(({ mail }) => mail === 'at-once').map(({ id }) => id);
  if (noticeIds.length > 0) await announce(manager, 'send-notices', { noticeIds });
  for (const { personId, mail } of given) if (mail === 'daily') await announceDigest(manager, personId, at);
}

/** One is enough, however much it will tell. */
async function announceDigest(manager: EntityManager, personId: string, at: Date): Promise<void> {
  const [{ waits }] = await manager.query<[{ waits: boolean }]>(
    `select exists (select 1 from task_run where name = 'send-digest' and key = $1 and dispatched_at is null) as waits`,
    [personId],
  );
  if (waits) return;
  const { timeZone } = await labSettings(manager);
  await announce(
    manager,
    'send-digest',
    { personId },
    { key: personId, delayMs: untilDailyMs(at.getTime(), timeZone) },
  );
}

/** How long from now to the next daily mail, ms. */
export function untilDailyMs(nowMs: number, timeZone: string): number {
  const today = localDateAt(nowMs, timeZone);
  const next = [today, addDays(today, 1)].map((day) => instantAt(day, DAILY_AT, timeZone)).find((at) => at > nowMs);
  return next! - nowMs;
}
