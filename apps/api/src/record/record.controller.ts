import type { Page, RecordEventView } from '#libs/contract/src/index.js';
import { EventRepository, peopleNamed } from '#libs/records/src/index.js';
import { Controller, Get, Query } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { Text } from '../platform/fields.js';
import { May } from '../platform/may.js';

const PAGE = 100;

export class ListRecordDto {
  @Text({ max: 100, optional: true, about: 'What the events are about: its id, reference, tag or report number.' })
  subject?: string;

  @Text({ max: 18, pattern: /^\d+$/, allowed: 'the `next` of the page before', optional: true })
  cursor?: string;
}

/** The record: who did what, when, and why. */
@Controller('record')
export class RecordController {
  constructor(private readonly records: DataSource) {}

  /** Events, newest first. */
  @Get()
  @May('see-record')
  async list(@Query() { subject, cursor }: ListRecordDto): Promise<Page<RecordEventView>> {
    const { manager } = this.records;
    const rows = await new EventRepository(manager).find(subject, cursor, PAGE + 1);
    const page = rows.slice(0, PAGE);
    const people = await peopleNamed(
      manager,
      page.map(({ actorId }) => actorId).filter((id) => id !== null),
    );
    const views = page.map(({ seq, at, actorId, kind, subjectKind, subjectId, before, after, why, hash }) => ({
      ...{ seq: seq!, at: at.toISOString(), kind, subjectKind, subjectId, before, after, why, hash: hash! },
      actor: actorId === null ? null : (people.get(actorId) ?? { id: actorId, name: '' }),
    }));
    return { rows: views, next: rows.length > PAGE ? page.at(-1)!.seq : null };
  }
}
