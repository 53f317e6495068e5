import { LabRecords } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { mailer } from '../send-notice/mail.js';
import { mailNotice } from '../send-notice/mail-notice.js';

/** Mails that are under way at once: each holds a connection to the database. */
const AT_ONCE = 3;

/** Mails the notices of one event, each by itself: what one mail server refuses keeps nobody else from hearing of it. */
@Injectable()
export class SendNoticesProcessor implements TaskProcessor<'send-notices'> {
  readonly handles = 'send-notices';
  private readonly send = mailer(this.config);

  constructor(
    private readonly records: LabRecords,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  async run({ noticeIds }: TaskPayload<'send-notices'>): Promise<Record<string, unknown>> {
    const { send } = this;
    if (!send) return { mailed: 0, because: 'the lab has no mail server' };
    const post = { send, publicUrl: this.config.publicUrl };
    let mailed = 0;
    for (let from = 0; from < noticeIds.length; from += AT_ONCE) {
      const some = noticeIds.slice(from, from + AT_ONCE).map((id) => mailNotice(this.records, post, id, true));
      mailed += (await Promise.all(some)).filter((one) => one['mailed'] === true).length;
    }
    return { mailed, of: noticeIds.length };
  }
}
