import { Controller, Get, Header, Param, Query } from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { Text } from '../platform/fields.js';
import { Open } from '../platform/may.js';
import { FeedsService } from './feeds.service.js';

export class FeedDto {
  @Text({ max: 100, optional: true, about: 'A key for feeds, as it was made under `feed-keys`.' })
  key?: string;
}

/** Calendar feeds by RFC 5545. Calendar programs cannot sign in: a key in the address opens feeds, and nothing else. */
@Controller('feeds')
export class FeedsController {
  constructor(private readonly feeds: FeedsService) {}

  /** What the plan has on a frame. */
  @Get('frames/:tag.ics')
  @Header('Content-Type', 'text/calendar; charset=utf-8')
  @Header('Cache-Control', 'private, no-store')
  @ApiProduces('text/calendar')
  @Open()
  frame(@Param('tag') tag: string, @Query() { key }: FeedDto): Promise<string> {
    return this.feeds.ofFrame(tag, key);
  }

  /** What the plan has for a technician. */
  @Get('people/:id.ics')
  @Header('Content-Type', 'text/calendar; charset=utf-8')
  @Header('Cache-Control', 'private, no-store')
  @ApiProduces('text/calendar')
  @Open()
  person(@Param('id') id: string, @Query() { key }: FeedDto): Promise<string> {
    return this.feeds.ofPerson(id, key);
  }
}
