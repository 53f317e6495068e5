import type { EntityManager } from 'typeorm';
import { RecordEventEntity } from './record-event.entity.js';

/** Reads the record; writing is `append`'s. */
export class EventRepository {
  constructor(private readonly manager: EntityManager) {}

  /**
   * Events, newest first.
   *
   * @param subject id of what they are about; absent means all
   * @param beforeSeq only events before this one
   */
  find(subject: string | undefined, beforeSeq: string | undefined, limit: number): Promise<RecordEventEntity[]> {
    const query = this.manager
      .createQueryBuilder(RecordEventEntity, 'event')
      .where('event.seq is not null')
      .orderBy('event.seq', 'DESC')
      .take(limit);
    if (subject) query.andWhere('event.subjectId = :subject', { subject });
    if (beforeSeq) query.andWhere('event.seq < :beforeSeq', { beforeSeq });
    return query.getMany();
  }
}
