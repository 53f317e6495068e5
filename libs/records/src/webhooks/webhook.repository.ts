import { randomBytes, randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { IsNull } from 'typeorm';
import type { NewWebhookBody, WebhookMessage } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { announce } from '../tasks/announce.js';
import { WebhookDeliveryEntity } from './webhook-delivery.entity.js';
import { WebhookEntity } from './webhook.entity.js';

/** What a delivery needs: the text, where to, and what to sign with. */
export interface DueDelivery {
  id: string;
  eventId: string;
  body: string;
  tries: number;
  url: string;
  secret: string;
}

/** How a try went: the receiver's status, or why there was none. */
export interface TryOutcome {
  status: number | null;
  trouble: string | null;
}

/** How long after each failed try the next one comes, s; after the last it is given up. A day in all. */
export const TRY_AGAIN_S = [1, 5, 30, 120, 600, 3_600, 14_400, 64_800];

/** Addresses of other programs, and what was delivered to them. */
export class WebhookRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Those in force, oldest first. */
  all(): Promise<WebhookEntity[]> {
    return this.manager.find(WebhookEntity, { where: { endedAt: IsNull() }, order: { addedAt: 'ASC' } });
  }

  /** @throws LabError `webhook/unknown` */
  async get(id: string): Promise<WebhookEntity> {
    const row = await this.manager.findOneBy(WebhookEntity, { id, endedAt: IsNull() });
    if (!row) throw new LabError('webhook/unknown', 'There is no such webhook.', { webhookId: id });
    return row;
  }

  /** @returns the secret, which is shown this once */
  async add({ url, kinds }: NewWebhookBody, addedBy: string, addedAt: Date): Promise<{ id: string; secret: string }> {
    const [id, secret] = [randomUUID(), `sign_${randomBytes(32).toString('base64url')}`];
    await insertRows(this.manager, WebhookEntity, [{ id, url, kinds: [...kinds], secret, addedBy, addedAt }]);
    return { id, secret };
  }

  async end(id: string): Promise<void> {
    await this.get(id);
    await updateRows(this.manager, WebhookEntity, { id }, { endedAt: () => 'now()' });
  }

  /** Newest first. */
  deliveries(webhookId: string, limit: number): Promise<WebhookDeliveryEntity[]> {
    return this.manager.find(WebhookDeliveryEntity, {
      where: { webhookId },
      order: { announcedAt: 'DESC' },
      take: limit,
    });
  }

  /** Sends something that did not happen, so that whoever set it up sees whether it arrives. @returns the delivery's id */
  async tryOut(webhookId: string, at: Date): Promise<string> {
    const [id, eventId] = [randomUUID(), randomUUID()];
    const message: WebhookMessage = {
      ...{ id: eventId, kind: 'webhook/tried', at: at.toISOString() },
      subject: { kind: 'webhook', id: webhookId },
    };
    const row = { id, webhookId, eventId, kind: message.kind, body: JSON.stringify(message), announcedAt: at };
    await insertRows(this.manager, WebhookDeliveryEntity, [row]);
    await announce(this.manager, 'deliver-webhook', { deliveryId: id });
    return id;
  }

  /** Delivers once more what was given up. @throws LabError `delivery/unknown`, `delivery/not-failed` */
  async again(webhookId: string, id: string): Promise<void> {
    const changed = await updateRows(
      this.manager,
      WebhookDeliveryEntity,
      { id, webhookId, state: 'failed' },
      { state: 'waiting', tries: 0 },
    );
    if (changed === 1) return void (await announce(this.manager, 'deliver-webhook', { deliveryId: id }));
    const row = await this.manager.findOneBy(WebhookDeliveryEntity, { id, webhookId });
    if (!row) throw new LabError('delivery/unknown', 'There is no such delivery.', { deliveryId: id });
    throw new LabError('delivery/not-failed', `The delivery is ${row.state}; only one that failed is sent again.`, {
      state: row.state,
    });
  }

  /** @returns null when there is nothing to deliver any more */
  async findDue(id: string): Promise<DueDelivery | null> {
    const [row] = await this.manager.query<DueDelivery[]>(
      `select delivery.id, delivery.event_id as "eventId", delivery.body, delivery.tries, webhook.url, webhook.secret
       from webhook_delivery delivery join webhook on webhook.id = delivery.webhook_id
       where delivery.id = $1 and delivery.state = 'waiting' and webhook.ended_at is null`,
      [id],
    );
    return row ?? null;
  }

  /**
   * Keeps how a try went, and announces the next one. Of two runs of the same try only the first counts.
   *
   * @param at when it went so
   */
  async storeTry({ id, tries }: DueDelivery, { status, trouble }: TryOutcome, at: Date): Promise<void> {
    const waitS = trouble === null ? undefined : TRY_AGAIN_S[tries];
    const state = trouble === null ? 'delivered' : waitS === undefined ? 'failed' : 'waiting';
    const changed = await updateRows(
      this.manager,
      WebhookDeliveryEntity,
      { id, tries, state: 'waiting' },
      {
        ...{ state, tries: tries + 1, lastStatus: status, trouble },
        nextTryAt: waitS === undefined ? null : new Date(at.getTime() + waitS * 1_000),
        deliveredAt: trouble === null ? at : null,
      },
    );
    if (changed === 1 && waitS !== undefined)
      await announce(this.manager, 'deliver-webhook', { deliveryId: id }, { delayMs: waitS * 1_000 });
  }
}
