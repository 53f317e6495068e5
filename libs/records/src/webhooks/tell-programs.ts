import type { EntityManager } from 'typeorm';
import { WEBHOOK_KINDS } from '#libs/contract/src/index.js';
import type { WebhookMessage } from '#libs/contract/src/index.js';
import type { RecordEntry } from '../record/append.js';
import { announce } from '../tasks/announce.js';

/** Announces a delivery of an event to every address that wants its kind, in the event's transaction. */
export async function tellPrograms(manager: EntityManager, eventId: string, event: RecordEntry): Promise<void> {
  const kind = WEBHOOK_KINDS.find((known) => known === event.kind);
  if (!kind) return;
  const message: WebhookMessage = {
    ...{ id: eventId, kind, at: event.at.toISOString() },
    subject: { kind: event.subjectKind, id: event.subjectId },
  };
  const made = await manager.query<{ id: string }[]>(
    `insert into webhook_delivery (id, webhook_id, event_id, kind, body, announced_at)
     select gen_random_uuid(), webhook.id, $1::uuid, $2, $3, $4 from webhook where webhook.ended_at is null and $2 = any(webhook.kinds)
     returning id`,
    [eventId, kind, JSON.stringify(message), event.at],
  );
  for (const { id } of made) await announce(manager, 'deliver-webhook', { deliveryId: id });
}
