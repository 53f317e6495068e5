import { getPerson, LabRecords, NoticeRepository } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { mailer } from '../send-notice/mail.js';
import { digestText } from '../send-notice/notice-text.js';

/** Mails all that somebody has neither read nor been mailed yet, as one. A server that is away is tried again by the queue. */
@Injectable()
export class SendDigestProcessor implements TaskProcessor<'send-digest'> {
  readonly handles = 'send-digest';
  private readonly send = mailer(this.config);

  constructor(
    private readonly records: LabRecords,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  run({ personId }: TaskPayload<'send-digest'>): Promise<Record<string, unknown>> {
    const { send } = this;
    if (!send) return Promise.resolve({ mailed: 0, because: 'the lab has no mail server' });
    return this.records.quietly(async (manager) => {
      const notices = new NoticeRepository(manager);
      const person = await getPerson(manager, personId);
      const wanted = (await notices.mailWay(personId)) === 'daily';
      if (!wanted || !person.active) return { mailed: 0, because: 'it is not wanted any more' };
      const held = await notices.holdForDigest(personId);
      if (held.length === 0) return { mailed: 0, because: 'there is nothing new' };
      const subject = held.length === 1 ? held[0]!.subject : `${held.length} things from the lab`;
      const text = digestText(held, this.config.publicUrl);
      await send({ to: person.email, subject, text, key: `digest-${held[0]!.id}` });
      await notices.mailed(held.map(({ id }) => id));
      return { mailed: held.length };
    });
  }
}
