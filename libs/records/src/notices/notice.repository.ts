import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import type { EntityManager } from 'typeorm';
import { In, IsNull } from 'typeorm';
import type { MailWay } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { PersonEntity } from '../people/person.entity.js';
import { seesTeamSql } from '../people/sees.js';
import { notify } from '../platform/live-events.js';
import { updateRows } from '../platform/write-rows.js';
import { announce } from '../tasks/announce.js';
import { DEFAULT_MAIL } from './give-notices.js';
import { NoticeEntity } from './notice.entity.js';

/** How long after a mail that did not go out it is tried again, min; after the last it stays in the page only. */
const TRY_AGAIN_MIN = [1, 5, 30, 120, 480, 1440];

/** What people are told, each their own. */
export class NoticeRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Newest first. @param before the end of the page before */
  async find(personId: string, before: { at: Date; id: string } | null, limit: number): Promise<NoticeEntity[]> {
    const query = this.manager
      .createQueryBuilder(NoticeEntity, 'notice')
      .where('notice.personId = :personId', { personId })
      .orderBy('notice.at', 'DESC')
      .addOrderBy('notice.id', 'DESC')
      .take(limit);
    if (before) query.andWhere(`(date_trunc('milliseconds', notice.at), notice.id) < (:at, :id)`, before);
    return query.getMany();
  }

  unread(personId: string): Promise<number> {
    return this.manager.countBy(NoticeEntity, { personId, readAt: IsNull() });
  }

  /** @throws LabError `notice/unknown`, also for somebody else's */
  async read(personId: string, id: string, readAt: Date): Promise<void> {
    if (!(await this.manager.existsBy(NoticeEntity, { id, personId })))
      throw new LabError('notice/unknown', 'You have no such notice.', { noticeId: id });
    await updateRows(this.manager, NoticeEntity, { id, personId, readAt: IsNull() }, { readAt });
    await notify(this.manager, { topic: 'notices', id: personId });
  }

  async readAll(personId: string, readAt: Date): Promise<void> {
    await updateRows(this.manager, NoticeEntity, { personId, readAt: IsNull() }, { readAt });
    await notify(this.manager, { topic: 'notices', id: personId });
  }

  async mailWay(personId: string): Promise<MailWay> {
    const person = await this.manager.findOneBy(PersonEntity, { id: personId });
    return person?.notices.mail ?? DEFAULT_MAIL;
  }

  /** Without the version: how somebody wants to be told is no edit of who they are. */
  async chooseMail(personId: string, mail: MailWay): Promise<void> {
    await this.manager.query('update person set notices = notices || $2 where id = $1', [
      personId,
      JSON.stringify({ mail }),
    ]);
  }

  /**
   * One notice to be mailed, held to the end of the transaction so that two runs do not both mail it.
   *
   * @returns null when there is nothing to mail any more: mailed, read, being mailed elsewhere, or about something that the
   * person does not see any more
   */
  async holdForMail(id: string): Promise<NoticeEntity | null> {
    const [row] = await this.held({ id });
    return row ?? null;
  }

  /** All that somebody has neither read nor been mailed, oldest first, held in the same way. */
  holdForDigest(personId: string): Promise<NoticeEntity[]> {
    return this.held({ personId });
  }

  private async held(which: { id: string } | { personId: string }): Promise<NoticeEntity[]> {
    const ids = await this.stillSeen(which);
    return this.manager.find(NoticeEntity, {
      where: { id: In(ids), readAt: IsNull(), mailedAt: IsNull() },
      order: { at: 'ASC' },
      take: MOST_IN_ONE_MAIL,
      lock: { mode: 'pessimistic_write', onLocked: 'skip_locked' },
    });
  }

  /** Ids of those about something that their person sees now: a mail reaches people after they have left a team. */
  private async stillSeen(which: { id: string } | { personId: string }): Promise<string[]> {
    const rows = await this.manager.query<{ id: string }[]>(
      `select notice.id from notice join person on person.id = notice.person_id
         left join report on report.id = substring(notice.path from '^/reports/(.{36})$')::uuid
         left join request on request.id = coalesce(report.request_id, substring(notice.path from '^/requests/(.{36})$')::uuid)
       where ${'id' in which ? 'notice.id' : 'notice.person_id'} = $1 and notice.read_at is null and notice.mailed_at is null
         and ${seesTeamSql('request.team_id')}`,
      ['id' in which ? which.id : which.personId],
    );
    return rows.map(({ id }) => id);
  }

  async mailed(ids: readonly string[]): Promise<void> {
    await this.manager.query('update notice set mailed_at = now(), mail_trouble = null where id = any($1)', [ids]);
  }

  /** Keeps why a mail did not go out. @returns when it is tried again, ms from now; null when it is given up */
  async mailFailed({ id, mailTries }: NoticeEntity, trouble: string, final: boolean): Promise<number | null> {
    await updateRows(this.manager, NoticeEntity, { id }, { mailTries: mailTries + 1, mailTrouble: trouble });
    const waitMin = final ? undefined : TRY_AGAIN_MIN[mailTries];
    if (waitMin === undefined) return null;
    const delayMs = waitMin * MS_PER_MINUTE;
    await announce(this.manager, 'send-notice', { noticeId: id }, { delayMs });
    return delayMs;
  }
}

const MOST_IN_ONE_MAIL = 200;
