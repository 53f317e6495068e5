import { Module } from '@nestjs/common';
import { FeedKeysController } from './feed-keys.controller.js';
import { FeedsController } from './feeds.controller.js';
import { FeedsService } from './feeds.service.js';

@Module({ controllers: [FeedsController, FeedKeysController], providers: [FeedsService] })
export class FeedsModule {}
