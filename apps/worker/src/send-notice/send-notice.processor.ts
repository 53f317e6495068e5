import { getPerson, NoticeRepository } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { mailer, MailTrouble } from './mail.js';
import { noticeText } from './notice-text.js';

/**
 * Mails one notice, unless it has been read or mailed meanwhile. The notice is held while the server is spoken to, so that two
 * runs do not both send it; a worker that dies in between may send it again, under the same Message-ID.
 */
@Injectable()
export class SendNoticeProcessor implements TaskProcessor<'send-notice'> {
  readonly handles = 'send-notice';
  private readonly send = mailer(this.config);

  constructor(
    private readonly records: DataSource,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  run({ noticeId }: TaskPayload<'send-notice'>): Promise<Record<string, unknown>> {
    const { send } = this;
    if (!send) return Promise.resolve({ mailed: false, because: 'the lab has no mail server' });
    return this.records.transaction(async (manager) => {
      const notices = new NoticeRepository(manager);
      const notice = await notices.holdForMail(noticeId);
      if (!notice) return { mailed: false, because: 'it was read or mailed already' };
      const person = await getPerson(manager, notice.personId);
      const wanted = (await notices.mailWay(person.id)) === 'at-once';
      if (!wanted || !person.active) return { mailed: false, because: 'it is not wanted any more' };
      try {
        const text = noticeText(notice, this.config.publicUrl);
        await send({ to: person.email, subject: notice.subject, text, key: `notice-${notice.id}` });
        await notices.mailed([notice.id]);
        return { mailed: true };
      } catch (error) {
        if (!(error instanceof MailTrouble)) throw error;
        const againInMs = await notices.mailFailed(notice, error.message, error.final);
        return { mailed: false, because: error.message, againInMs };
      }
    });
  }
}
