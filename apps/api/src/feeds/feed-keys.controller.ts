import type { FeedKeyView, NewFeedKeyBody } from '#libs/contract/src/index.js';
import { FeedKeyRepository, LabRecords } from '#libs/records/src/index.js';
import { Body, Controller, Delete, Get, HttpCode, Param, Post } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { By } from '../platform/by.js';
import { Text } from '../platform/fields.js';
import { May } from '../platform/may.js';
import { ShownOnce } from '../platform/shown-once.js';
import type { SignedIn } from '../platform/signed-in.js';

export class NewFeedKeyDto implements NewFeedKeyBody {
  @Text({ max: 80, example: 'Phone' })
  name!: string;
}

/** One's own keys for calendar feeds. */
@Controller('feed-keys')
export class FeedKeysController {
  constructor(private readonly records: LabRecords) {}

  @Get()
  @May('see-plan')
  list(@By() by: SignedIn): Promise<FeedKeyView[]> {
    return this.views(by.id);
  }

  /** Makes a key. It is shown in this answer and never again. */
  @Post()
  @ShownOnce()
  @May('see-plan')
  async make(@Body() { name }: NewFeedKeyDto, @By() by: SignedIn): Promise<FeedKeyView> {
    const { id, key } = await this.records.act(by.id, async ({ manager, record, now }) => {
      const made = await new FeedKeyRepository(manager).make(by.id, name, now());
      await record({ kind: 'feed-key/made', subjectId: made.id });
      return made;
    });
    const view = (await this.views(by.id)).find((one) => one.id === id)!;
    return { ...view, key };
  }

  @Delete(':id')
  @HttpCode(204)
  @May('see-plan')
  revoke(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<void> {
    return this.records.act(by.id, async ({ manager, record }) => {
      await new FeedKeyRepository(manager).revoke(by.id, id);
      await record({ kind: 'feed-key/ended', subjectId: id });
    });
  }

  private async views(personId: string): Promise<FeedKeyView[]> {
    const rows = await new FeedKeyRepository(this.records.manager).ofPerson(personId);
    return rows.map(({ id, name, madeAt, usedAt }) => ({
      ...{ id, name, madeAt: madeAt.toISOString(), usedAt: usedAt?.toISOString() ?? null },
    }));
  }
}
