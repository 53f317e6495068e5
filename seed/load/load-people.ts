import { addDays, instantAt, localDateAt, weekdayOf } from '#libs/calendar/src/index.js';
import {
  AuthorisationEntity,
  ClosedDayEntity,
  DEFAULT_LAB_SETTINGS,
  insertRows,
  LabSettingEntity,
  PersonEntity,
  RosterShiftEntity,
  TeamEntity,
  TeamMemberEntity,
} from '#libs/records/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import type { EntityManager } from 'typeorm';
import { idOf } from '../northmoor/ids.js';
import type { LabTime } from '../northmoor/lab-time.js';
import { emailOf, PEOPLE, TEAMS, ZONE } from '../northmoor/people.js';
import type { DemoPerson } from '../northmoor/people.js';
import { CLOSED_DAYS, SETTINGS, SHIFT_HOURS, shiftOf } from '../northmoor/settings.js';
import { workOf } from '../northmoor/work.js';

/** Weeks of the roster before and after the start. */
const WEEKS_BACK = 3;
const WEEKS_AHEAD = 10;

export const personId = (key: string): string => idOf('person', key);
export const teamId = (name: string): string => idOf('team', name);

/** Settings, teams, people, what they may run and when they work. */
export async function loadPeople(
  manager: EntityManager,
  time: LabTime,
  methods: readonly Method[],
  passwordHash: string,
): Promise<void> {
  const settings = { ...DEFAULT_LAB_SETTINGS, ...SETTINGS };
  await insertRows(manager, LabSettingEntity, [{ id: 1, settings, changedAt: time.now }]);
  await insertRows(manager, ClosedDayEntity, closedDays(time));
  await insertRows(
    manager,
    PersonEntity,
    PEOPLE.map((person) => personRow(person, time, passwordHash)),
  );
  await insertRows(
    manager,
    TeamEntity,
    TEAMS.map((name) => ({ id: teamId(name), name })),
  );
  await insertRows(
    manager,
    TeamMemberEntity,
    PEOPLE.flatMap(({ key, teams }) => teams.map((team) => ({ teamId: teamId(team), personId: personId(key) }))),
  );
  await insertRows(
    manager,
    AuthorisationEntity,
    PEOPLE.flatMap((person) => authorisations(person, time, methods)),
  );
  await insertRows(
    manager,
    RosterShiftEntity,
    PEOPLE.flatMap((person) => roster(person, time)),
  );
}

function personRow({ key, name, roles }: DemoPerson, time: LabTime, passwordHash: string): Partial<PersonEntity> {
  return {
    id: personId(key),
    name,
    email: emailOf(key),
    passwordHash,
    roles,
    active: true,
    notices: {},
    createdAt: time.daysFromNow(-420),
  };
}

function authorisations(
  { key, work = [] }: DemoPerson,
  time: LabTime,
  methods: readonly Method[],
): Partial<AuthorisationEntity>[] {
  return methods
    .filter((method) => work.includes(workOf(method)))
    .map(({ id: methodCode }) => ({
      id: idOf('authorisation', `${key}/${methodCode}`),
      personId: personId(key),
      methodCode,
      fromAt: time.daysFromNow(-400),
      toAt: null,
      grantedBy: personId('ruth.calloway'),
    }));
}

function roster({ key, shift }: DemoPerson, time: LabTime): Partial<RosterShiftEntity>[] {
  if (!shift) return [];
  const today = localDateAt(time.nowMs, ZONE);
  const monday = addDays(today, 1 - weekdayOf(today) - 7 * WEEKS_BACK);
  return Array.from({ length: 7 * (WEEKS_BACK + 1 + WEEKS_AHEAD) }, (_, day) => day)
    .filter((day) => day % 7 < 5 && !isClosed(addDays(monday, day)))
    .map((day) => {
      const date = addDays(monday, day);
      const { from, to } = SHIFT_HOURS[shiftOf(shift, Math.floor(day / 7))];
      return {
        id: idOf('roster-shift', `${key}/${date}`),
        personId: personId(key),
        startsAt: new Date(instantAt(date, from, ZONE)),
        endsAt: new Date(instantAt(date, to, ZONE)),
      };
    });
}

const isClosed = (date: string): boolean => CLOSED_DAYS.some(({ monthDay }) => date.endsWith(monthDay));

function closedDays({ nowMs }: LabTime): Partial<ClosedDayEntity>[] {
  const year = Number(localDateAt(nowMs, ZONE).slice(0, 4));
  return [year, year + 1].flatMap((each) =>
    CLOSED_DAYS.map(({ monthDay, name }) => ({ day: `${each}-${monthDay}`, name })),
  );
}
