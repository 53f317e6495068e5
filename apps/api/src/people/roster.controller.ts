import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import { Body, Controller, Delete, Get, HttpCode, Param, ParseUUIDPipe, Post, Query } from '@nestjs/common';
import type { RosterView } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { getPerson, LabRecords, RosterRepository } from '#libs/records/src/index.js';
import { By } from '../platform/by.js';
import { isDay } from '../platform/fields.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { ClosedDayDto, RosterShiftDto, RosterSpanDto } from './people.dto.js';

const SHOWN_DAYS = 28;
const LONGEST_SHIFT_H = 24;

/** Who is at work when. Plans are made anew when it changes. */
@Controller('roster')
export class RosterController {
  constructor(private readonly records: LabRecords) {}

  /** The shifts that touch a span, four weeks from now unless asked otherwise, and the days on which the lab is closed. */
  @Get()
  @May('see-roster')
  async view(@Query() { from, to }: RosterSpanDto): Promise<RosterView> {
    const begin = from ? new Date(from) : new Date(this.records.clock.nowMs() - MS_PER_DAY);
    const end = to ? new Date(to) : new Date(begin.getTime() + SHOWN_DAYS * MS_PER_DAY);
    const roster = new RosterRepository(this.records.manager);
    return { shifts: await roster.shifts(begin, end), closedDays: await roster.closedDays() };
  }

  @Post()
  @May('edit-roster')
  async add(@Body() body: RosterShiftDto, @By() by: SignedIn): Promise<{ id: string }> {
    const shift = { personId: body.personId, startsAt: new Date(body.startsAt), endsAt: new Date(body.endsAt) };
    refuseOddLength(shift.startsAt, shift.endsAt);
    return this.records.act(by.id, async ({ manager, record }) => {
      await getPerson(manager, body.personId);
      const id = await new RosterRepository(manager).add(shift);
      await record({
        kind: 'roster/added',
        subjectId: id,
        after: { ...body },
      });
      return { id };
    });
  }

  @Delete(':id')
  @HttpCode(204)
  @May('edit-roster')
  async remove(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record }) => {
      const { personId, startsAt, endsAt } = await new RosterRepository(manager).remove(id);
      const before = { personId, startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() };
      await record({
        kind: 'roster/removed',
        subjectId: id,
        before,
      });
    });
  }

  /** Closes the lab for a day; a day that is closed gets another name. */
  @Post('closed-days')
  @HttpCode(204)
  @May('edit-roster')
  async close(@Body() body: ClosedDayDto, @By() by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record }) => {
      await new RosterRepository(manager).close({ day: body.day, name: body.name });
      await record({
        kind: 'calendar/closed',
        subjectId: body.day,
        after: { name: body.name },
      });
    });
  }

  @Delete('closed-days/:day')
  @HttpCode(204)
  @May('edit-roster')
  async reopen(@Param('day') day: string, @By() by: SignedIn): Promise<void> {
    if (!isDay(day))
      throw new InvalidInput([fieldProblem({ field: 'day', found: day, allowed: 'a day, e.g. 2026-11-25', unit: '' })]);
    await this.records.act(by.id, async ({ manager, record }) => {
      await new RosterRepository(manager).reopen(day);
      await record({
        kind: 'calendar/reopened',
        subjectId: day,
      });
    });
  }
}

function refuseOddLength(startsAt: Date, endsAt: Date): void {
  const lengthH = (endsAt.getTime() - startsAt.getTime()) / 3_600_000;
  if (lengthH > 0 && lengthH <= LONGEST_SHIFT_H) return;
  const allowed = `after startsAt, at most ${LONGEST_SHIFT_H} h later`;
  throw new InvalidInput([fieldProblem({ field: 'endsAt', found: endsAt.toISOString(), allowed, unit: '' })]);
}
