import type { EntityManager } from 'typeorm';
import { RecordEventEntity } from './record-event.entity.js';

/** Reads the record; writing is `append`'s. */
export class EventRepository {
  constructor(private readonly manager: EntityManager) {}

  /**
   * Events, newest first.
   *
   * @param subject what they are about: its id, or what people call it (reference, tag, report number); absent means all
   * @param beforeSeq only events before this one
   */
  async find(subject: string | undefined, beforeSeq: string | undefined, limit: number): Promise<RecordEventEntity[]> {
    const query = this.manager
      .createQueryBuilder(RecordEventEntity, 'event')
      .where('event.seq is not null')
      .orderBy('event.seq', 'DESC')
      .take(limit);
    if (subject) query.andWhere('event.subjectId in (:...subjects)', { subjects: await this.idsOf(subject) });
    if (beforeSeq) query.andWhere('event.seq < :beforeSeq', { beforeSeq });
    return query.getMany();
  }

  /** The text itself, which may be an id, and the ids of what is called so; a report's revisions share a number. */
  private async idsOf(subject: string): Promise<string[]> {
    const found = await this.manager.query<{ id: string }[]>(
      `select id::text from request where reference = $1 union all select id::text from job where reference = $1
      union all select id::text from item where tag = $1 union all select id::text from report where number = $1`,
      [subject],
    );
    return [subject, ...found.map(({ id }) => id)];
  }
}
