import type { DeliveryView, WebhookView } from '#libs/contract/src/index.js';
import { Body, Controller, Delete, Get, HttpCode, Param, Post } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { By } from '../platform/by.js';
import { May } from '../platform/may.js';
import { ShownOnce } from '../platform/shown-once.js';
import type { SignedIn } from '../platform/signed-in.js';
import { NewWebhookDto } from './webhook.dto.js';
import { WebhooksService } from './webhooks.service.js';

/**
 * Other programs that are told of events. A delivery is a POST of `{ id, kind, at, subject }` with `Webhook-Id` (the event's, the
 * same when it comes again) and `Webhook-Signature: t=…,v1=…`: v1 is the HMAC-SHA-256 of t, a full stop and the body, in hex.
 */
@Controller('webhooks')
export class WebhooksController {
  constructor(private readonly webhooks: WebhooksService) {}

  @Get()
  @May('edit-webhooks')
  list(): Promise<WebhookView[]> {
    return this.webhooks.list();
  }

  /** Adds an address. The secret that signs is in this answer and never again. */
  @Post()
  @ShownOnce()
  @May('edit-webhooks')
  add(@Body() body: NewWebhookDto, @By() by: SignedIn): Promise<WebhookView> {
    return this.webhooks.add(body, by);
  }

  /** Nothing is delivered there any more. */
  @Delete(':id')
  @HttpCode(204)
  @May('edit-webhooks')
  end(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<void> {
    return this.webhooks.end(id, by);
  }

  /** The newest deliveries, and how they went. */
  @Get(':id/deliveries')
  @May('edit-webhooks')
  deliveries(@Param('id', AnId) id: string): Promise<DeliveryView[]> {
    return this.webhooks.deliveries(id);
  }

  /** Sends a `webhook/tried`, to see whether it arrives. */
  @Post(':id/try')
  @HttpCode(202)
  @May('edit-webhooks')
  tryOut(@Param('id', AnId) id: string): Promise<{ deliveryId: string }> {
    return this.webhooks.tryOut(id);
  }

  /** Delivers once more what was given up. */
  @Post(':id/deliveries/:deliveryId/again')
  @HttpCode(204)
  @May('edit-webhooks')
  again(@Param('id', AnId) id: string, @Param('deliveryId', AnId) deliveryId: string): Promise<void> {
    return this.webhooks.again(id, deliveryId);
  }
}
