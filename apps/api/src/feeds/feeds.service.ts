import { icsFeed } from '#libs/calendar/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import {
  readFeedBookings,
  FeedKeyRepository,
  getPerson,
  ItemRepository,
  LabRecords,
  labSettings,
} from '#libs/records/src/index.js';
import type { FeedOf, FeedReader } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { isId } from '../platform/fields.js';
import { permissionsOf } from '../platform/permissions.js';
import { bookingEvent } from './booking-event.js';

/** The plan as calendars, for those whose key and roles let them see it. What they may not see is not there. */
@Injectable()
export class FeedsService {
  constructor(private readonly records: LabRecords) {}

  /** @throws LabError `feed/unknown` for a wrong key, a wrong tag, and somebody who may not see the plan */
  async ofFrame(tag: string, key: string | undefined): Promise<string> {
    await this.reader(key);
    const [frame] = await new ItemRepository(this.records.manager).findByTags([tag]);
    if (frame?.kind !== 'frame') throw unknown();
    return this.feed(`${frame.tag} ${frame.name}`, { frameId: frame.id });
  }

  /** @throws LabError `feed/unknown` */
  async ofPerson(id: string, key: string | undefined): Promise<string> {
    await this.reader(key);
    if (!isId(id)) throw unknown();
    const person = await getPerson(this.records.manager, id).catch((error: unknown) => {
      throw error instanceof LabError ? unknown() : error;
    });
    return this.feed(person.name, { technicianId: person.id });
  }

  private async feed(name: string, of: FeedOf): Promise<string> {
    const { manager } = this.records;
    const { timeZone } = await labSettings(manager);
    const now = this.records.clock.now();
    const bookings = await readFeedBookings(manager, of, now);
    return icsFeed({
      name,
      stampMs: now.getTime(),
      events: bookings.map((booking) => bookingEvent(booking, timeZone)),
    });
  }

  private async reader(key: string | undefined): Promise<FeedReader> {
    const { manager, clock } = this.records;
    const reader = key ? await new FeedKeyRepository(manager).findReader(key, clock.now()) : null;
    if (!reader || !permissionsOf(reader.roles).has('see-plan')) throw unknown();
    return reader;
  }
}

function unknown(): LabError {
  return new LabError(
    'feed/unknown',
    'There is no such feed, or your key does not open it. Make a key on the page “Notices”.',
  );
}
