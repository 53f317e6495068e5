import { Module } from '@nestjs/common';
import { WebhooksController } from './webhooks.controller.js';
import { WebhooksService } from './webhooks.service.js';

@Module({ controllers: [WebhooksController], providers: [WebhooksService] })
export class WebhooksModule {}
