import { LabRecords, WebhookRepository } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Inject, Injectable } from '@nestjs/common';
import type { WorkerConfig } from '../config.js';
import type { TaskProcessor } from '../platform/task-processor.js';
import { WORKER_CONFIG } from '../platform/worker-config.js';
import { postMessage } from './post-message.js';
import { signatureOf } from './sign.js';

/**
 * One try to deliver one event to one address; a try that fails announces the next itself, minutes and hours later. A worker that
 * dies after the receiver has answered delivers again: receivers tell by `Webhook-Id` that they have it.
 */
@Injectable()
export class DeliverWebhookProcessor implements TaskProcessor<'deliver-webhook'> {
  readonly handles = 'deliver-webhook';

  constructor(
    private readonly records: LabRecords,
    @Inject(WORKER_CONFIG) private readonly config: WorkerConfig,
  ) {}

  async run({ deliveryId }: TaskPayload<'deliver-webhook'>): Promise<Record<string, unknown>> {
    const due = await new WebhookRepository(this.records.manager).findDue(deliveryId);
    if (!due) return { tried: false };
    const headers = {
      'Content-Type': 'application/json',
      'User-Agent': 'Loadtrain',
      'Webhook-Id': due.eventId,
      'Webhook-Signature': signatureOf(due.secret, due.body, this.records.clock.nowMs()),
    };
    const outcome = await postMessage(
      { url: due.url, body: due.body, headers },
      this.config.webhooksToPrivate === 'yes',
    );
    const at = this.records.clock.now();
    await this.records.quietly((manager) => new WebhookRepository(manager).storeTry(due, outcome, at));
    return { tried: true, ...outcome };
  }
}
