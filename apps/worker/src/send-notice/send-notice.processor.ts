import { LabRecords } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { mailer } from './mail.js';
import { mailNotice } from './mail-notice.js';

/** Tries one notice again whose mail did not go out. */
@Injectable()
export class SendNoticeProcessor implements TaskProcessor<'send-notice'> {
  readonly handles = 'send-notice';
  private readonly send = mailer(this.config);

  constructor(
    private readonly records: LabRecords,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  run({ noticeId }: TaskPayload<'send-notice'>): Promise<Record<string, unknown>> {
    const { send } = this;
    if (!send) return Promise.resolve({ mailed: false, because: 'the lab has no mail server' });
    return mailNotice(this.records, { send, publicUrl: this.config.publicUrl }, noticeId);
  }
}
