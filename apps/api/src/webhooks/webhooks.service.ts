import type { DeliveryView, WebhookKind, WebhookView } from '#libs/contract/src/index.js';
import { LabRecords, WebhookRepository } from '#libs/records/src/index.js';
import type { WebhookDeliveryEntity, WebhookEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import type { NewWebhookDto } from './webhook.dto.js';

const LOG_LINES = 100;

/** Other programs that the lab tells of what happens. */
@Injectable()
export class WebhooksService {
  constructor(private readonly records: LabRecords) {}

  async list(): Promise<WebhookView[]> {
    const webhooks = new WebhookRepository(this.records.manager);
    const views: WebhookView[] = [];
    for (const row of await webhooks.all()) views.push(viewOf(row, (await webhooks.deliveries(row.id, 1))[0]));
    return views;
  }

  /** The secret is in this answer and never again. */
  async add({ url, kinds }: NewWebhookDto, by: SignedIn): Promise<WebhookView> {
    const { id, secret } = await this.records.act(by.id, async ({ manager, record, now }) => {
      const made = await new WebhookRepository(manager).add({ url, kinds: [...new Set(kinds)] }, by.id, now());
      const subject = { subjectKind: 'webhook', subjectId: made.id };
      await record({ kind: 'webhook/added', ...subject, after: { url, kinds } });
      return made;
    });
    return { ...viewOf(await new WebhookRepository(this.records.manager).get(id), undefined), secret };
  }

  end(id: string, by: SignedIn): Promise<void> {
    return this.records.act(by.id, async ({ manager, record }) => {
      await new WebhookRepository(manager).end(id);
      await record({ kind: 'webhook/ended', subjectId: id });
    });
  }

  /** Newest first. */
  async deliveries(id: string): Promise<DeliveryView[]> {
    const webhooks = new WebhookRepository(this.records.manager);
    await webhooks.get(id);
    return (await webhooks.deliveries(id, LOG_LINES)).map(deliveryView);
  }

  tryOut(id: string): Promise<{ deliveryId: string }> {
    return this.records.quietly(async (manager) => {
      const webhooks = new WebhookRepository(manager);
      await webhooks.get(id);
      return { deliveryId: await webhooks.tryOut(id, this.records.clock.now()) };
    });
  }

  again(id: string, deliveryId: string): Promise<void> {
    return this.records.quietly(async (manager) => {
      const webhooks = new WebhookRepository(manager);
      await webhooks.get(id);
      await webhooks.again(id, deliveryId);
    });
  }
}

function viewOf({ id, url, kinds, addedAt }: WebhookEntity, last: WebhookDeliveryEntity | undefined): WebhookView {
  return { id, url, kinds: kinds as WebhookKind[], addedAt: addedAt.toISOString(), lastState: last?.state ?? null };
}

function deliveryView(row: WebhookDeliveryEntity): DeliveryView {
  const { id, eventId, kind, state, tries, announcedAt, lastStatus, trouble, nextTryAt, deliveredAt } = row;
  return {
    ...{ id, eventId, kind, state, tries, lastStatus, trouble, announcedAt: announcedAt.toISOString() },
    nextTryAt: nextTryAt?.toISOString() ?? null,
    deliveredAt: deliveredAt?.toISOString() ?? null,
  };
}
