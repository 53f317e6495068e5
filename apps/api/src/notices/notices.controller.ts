import type { MailWay, NoticePreferences, NoticesView } from '#libs/contract/src/index.js';
import { MAIL_WAYS } from '#libs/contract/src/index.js';
import { LabRecords, NoticeRepository } from '#libs/records/src/index.js';
import type { NoticeEntity } from '#libs/records/src/index.js';
import { Body, Controller, Get, HttpCode, Param, Post, Put, Query } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { cursorOf, readCursor } from '../exchange/cursor.js';
import { By } from '../platform/by.js';
import { OneOf, Text } from '../platform/fields.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';

const PAGE = 50;

export class ListNoticesDto {
  @Text({ max: 80, optional: true })
  cursor?: string;
}

export class NoticePreferencesDto implements NoticePreferences {
  @OneOf(MAIL_WAYS, {
    about: 'Mails of each thing at once, of all together once a day, or none. The page tells anyway.',
  })
  mail!: MailWay;
}

/** What one is told; everybody sees their own. */
@Controller('notices')
export class NoticesController {
  constructor(private readonly records: LabRecords) {}

  /** Newest first. */
  @Get()
  @May('see-own')
  async list(@Query() { cursor }: ListNoticesDto, @By() by: SignedIn): Promise<NoticesView> {
    const notices = new NoticeRepository(this.records.manager);
    const end = cursor ? readCursor(cursor) : null;
    const rows = await notices.find(by.id, end && { at: end.createdAt, id: end.id }, PAGE + 1);
    const page = rows.slice(0, PAGE);
    const last = rows.length > PAGE ? page.at(-1)! : null;
    const next = last && cursorOf({ createdAt: last.at, id: last.id });
    return { rows: page.map(noticeView), next, unread: await notices.unread(by.id) };
  }

  @Get('preferences')
  @May('see-own')
  async preferences(@By() by: SignedIn): Promise<NoticePreferences> {
    return { mail: await new NoticeRepository(this.records.manager).mailWay(by.id) };
  }

  /** How one wants to hear by mail. */
  @Put('preferences')
  @May('see-own')
  async choose(@Body() { mail }: NoticePreferencesDto, @By() by: SignedIn): Promise<NoticePreferences> {
    await new NoticeRepository(this.records.manager).chooseMail(by.id, mail);
    return { mail };
  }

  @Post('read-all')
  @HttpCode(204)
  @May('see-own')
  readAll(@By() by: SignedIn): Promise<void> {
    const at = this.records.clock.now();
    return this.records.quietly((manager) => new NoticeRepository(manager).readAll(by.id, at));
  }

  @Post(':id/read')
  @HttpCode(204)
  @May('see-own')
  read(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<void> {
    const at = this.records.clock.now();
    return this.records.quietly((manager) => new NoticeRepository(manager).read(by.id, id, at));
  }
}

function noticeView({ id, kind, path, subject, sentence, at, readAt }: NoticeEntity): NoticesView['rows'][number] {
  return { id, kind, path, subject, sentence, at: at.toISOString(), readAt: readAt?.toISOString() ?? null };
}
