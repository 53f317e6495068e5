import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { ClosedDay, RosterShiftView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { insertRows, upsertRows } from '../platform/write-rows.js';
import { ClosedDayEntity } from './closed-day.entity.js';
import { RosterShiftEntity } from './roster-shift.entity.js';

/** Who is at work when, and when nobody is. */
export class RosterRepository {
  constructor(private readonly manager: EntityManager) {}

  /** Every shift that touches [from, to). */
  async shifts(from: Date, to: Date): Promise<RosterShiftView[]> {
    const rows = await this.manager.query<
      (Omit<RosterShiftView, 'startsAt' | 'endsAt'> & { startsAt: Date; endsAt: Date })[]
    >(
      `select shift.id, shift.starts_at as "startsAt", shift.ends_at as "endsAt", jsonb_build_object('id', person.id, 'name', person.name) as person
       from roster_shift shift join person on person.id = shift.person_id
       where shift.starts_at < $2 and shift.ends_at > $1 order by shift.starts_at, person.name`,
      [from, to],
    );
    return rows.map((row) => ({ ...row, startsAt: row.startsAt.toISOString(), endsAt: row.endsAt.toISOString() }));
  }

  async add(shift: { personId: string; startsAt: Date; endsAt: Date }): Promise<string> {
    const id = randomUUID();
    await insertRows(this.manager, RosterShiftEntity, [{ id, ...shift }]);
    return id;
  }

  async remove(id: string): Promise<RosterShiftEntity> {
    const shift = await this.manager.findOneBy(RosterShiftEntity, { id });
    if (!shift) throw new LabError('shift/unknown', 'There is no such shift in the roster.', { shiftId: id });
    await this.manager.delete(RosterShiftEntity, { id });
    return shift;
  }

  closedDays(): Promise<ClosedDay[]> {
    return this.manager.find(ClosedDayEntity, { order: { day: 'ASC' } });
  }

  async close(day: ClosedDay): Promise<void> {
    await upsertRows(this.manager, ClosedDayEntity, [day], ['day']);
  }

  async reopen(day: string): Promise<void> {
    const { affected } = await this.manager.delete(ClosedDayEntity, { day });
    if (!affected) throw new LabError('closed-day/unknown', `The lab is not closed on ${day}.`, { day });
  }
}
