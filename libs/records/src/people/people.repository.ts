import { randomUUID } from 'node:crypto';
import { IsNull } from 'typeorm';
import type { EntityManager } from 'typeorm';
import type { PersonView, Role, TeamRef } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { AuthorisationEntity } from './authorisation.entity.js';
import { PersonEntity } from './person.entity.js';
import { TeamEntity, TeamMemberEntity } from './team.entity.js';

/** What one has to know of a person to let them in. */
export interface PersonAtDoor {
  id: string;
  name: string;
  email: string;
  roles: Role[];
  active: boolean;
  passwordHash: string | null;
}

export function findAtDoor(manager: EntityManager, email: string): Promise<PersonAtDoor | null> {
  return manager.findOne(PersonEntity, {
    where: { email: email.trim().toLowerCase() },
    select: { id: true, name: true, email: true, roles: true, active: true, passwordHash: true },
  });
}

export async function getPerson(manager: EntityManager, id: string): Promise<PersonEntity> {
  const person = await manager.findOneBy(PersonEntity, { id });
  if (!person) throw new LabError('person/unknown', 'There is no such person.', { personId: id });
  return person;
}

export function teamsOf(manager: EntityManager, personId: string): Promise<TeamRef[]> {
  return manager.query(
    'select team.id, team.name from team join team_member on team_member.team_id = team.id where person_id = $1 order by team.name',
    [personId],
  );
}

/** The name of a team, empty when there is none. */
export async function teamNamed(manager: EntityManager, id: string): Promise<string> {
  return (await manager.findOneBy(TeamEntity, { id }))?.name ?? '';
}

/** Puts a person into exactly these teams. */
export async function setTeams(manager: EntityManager, personId: string, teamIds: readonly string[]): Promise<void> {
  await manager.delete(TeamMemberEntity, { personId });
  const rows = [...new Set(teamIds)].map((teamId) => ({ personId, teamId }));
  await insertRows(manager, TeamMemberEntity, rows);
}

/** People by name, with their teams and what they are authorised for. @param id only this one */
export async function listPeople(manager: EntityManager, id?: string): Promise<PersonView[]> {
  return manager.query(
    `select person.id, person.name, person.email, person.roles, person.active, person.version,
       coalesce((select jsonb_agg(jsonb_build_object('id', team.id, 'name', team.name) order by team.name)
         from team join team_member on team_member.team_id = team.id where team_member.person_id = person.id), '[]') as teams,
       coalesce((select jsonb_agg(jsonb_build_object('id', held.id, 'methodCode', held.method_code, 'from', ${instant('held.from_at')}, 'to', ${instant('held.to_at')},
           'designation', coalesce((select method.designation from method where method.code = held.method_code order by method.version desc limit 1), held.method_code))
           order by held.method_code, held.from_at)
         from authorisation held where held.person_id = person.id), '[]') as authorisations
     from person where $1::uuid is null or person.id = $1 order by person.name, person.id`,
    [id ?? null],
  );
}

function instant(column: string): string {
  return `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
}

/** Some of the demo lab's people, for its sign-in page. */
export function listActive(manager: EntityManager): Promise<PersonEntity[]> {
  return manager.find(PersonEntity, { where: { active: true }, order: { name: 'ASC' } });
}

export async function addPerson(
  manager: EntityManager,
  person: Pick<PersonEntity, 'id' | 'name' | 'email' | 'roles' | 'passwordHash' | 'createdAt'>,
): Promise<void> {
  await insertRows(manager, PersonEntity, [person]);
}

/** @throws {LabError} `person/changed-meanwhile` when it is no longer the version that was read */
export async function changePerson(
  manager: EntityManager,
  person: PersonEntity,
  version: number,
  change: Partial<Pick<PersonEntity, 'name' | 'roles' | 'active'>>,
): Promise<void> {
  const changed = await updateRows(
    manager,
    PersonEntity,
    { id: person.id, version },
    { ...change, version: version + 1 },
  );
  if (changed === 0) {
    const sentence = `${person.name} was changed by someone else. Reload and try again.`;
    throw new LabError('person/changed-meanwhile', sentence, { version: person.version });
  }
}

export async function setPassword(manager: EntityManager, personId: string, passwordHash: string): Promise<void> {
  await updateRows(manager, PersonEntity, { id: personId }, { passwordHash });
}

export async function authorise(manager: EntityManager, authorisation: Omit<AuthorisationEntity, 'id'>): Promise<void> {
  await insertRows(manager, AuthorisationEntity, [{ id: randomUUID(), ...authorisation }]);
}

/** @throws {LabError} `authorisation/unknown` */
export async function endAuthorisation(
  manager: EntityManager,
  personId: string,
  id: string,
): Promise<AuthorisationEntity> {
  const held = await manager.findOneBy(AuthorisationEntity, { id, personId });
  if (!held)
    throw new LabError('authorisation/unknown', 'This person has no such authorisation.', { authorisationId: id });
  await manager.delete(AuthorisationEntity, { id });
  return held;
}

export function listTeams(manager: EntityManager): Promise<TeamRef[]> {
  return manager.find(TeamEntity, { order: { name: 'ASC' } });
}

/** @throws {LabError} `team/name-taken` */
export async function addTeam(manager: EntityManager, team: TeamRef): Promise<void> {
  await refuseTakenName(manager, team);
  await insertRows(manager, TeamEntity, [team]);
}

/**
 * @returns the name that the team had
 * @throws {LabError} `team/unknown`, `team/name-taken`
 */
export async function renameTeam(manager: EntityManager, team: TeamRef): Promise<string> {
  await refuseTakenName(manager, team);
  const before = await manager.findOneBy(TeamEntity, { id: team.id });
  if (!before) throw new LabError('team/unknown', 'There is no such team.', { teamId: team.id });
  await updateRows(manager, TeamEntity, { id: team.id }, { name: team.name });
  return before.name;
}

/** Names that differ in case or blanks only are the same to people. The lock keeps two of them from coming at once. */
async function refuseTakenName(manager: EntityManager, { id, name }: TeamRef): Promise<void> {
  await manager.query('lock table team in share row exclusive mode');
  const alike = (await listTeams(manager)).find((team) => team.id !== id && bare(team.name) === bare(name));
  if (alike) {
    const sentence = `There is a team named ${alike.name} already. Choose another name.`;
    throw new LabError('team/name-taken', sentence, { teamId: alike.id });
  }
}

function bare(name: string): string {
  return name.replace(/\s/g, '').toLowerCase();
}

/** Whether the lab has anybody yet; nobody is in a database that was just made. */
export function hasPeople(manager: EntityManager): Promise<boolean> {
  return manager.exists(PersonEntity);
}

/**
 * Finds who a subject of the single sign-on provider is. The first time it is bound to the person with the verified address.
 *
 * @returns the person's id, or null when nobody active is meant
 */
export async function bindSignOn(
  manager: EntityManager,
  subject: string,
  email: string | null,
): Promise<string | null> {
  const bound = await manager.findOneBy(PersonEntity, { signOnSubject: subject });
  if (bound) return bound.active ? bound.id : null;
  if (email === null) return null;
  const changed = await updateRows(
    manager,
    PersonEntity,
    { email: email.trim().toLowerCase(), active: true, signOnSubject: IsNull() },
    { signOnSubject: subject },
  );
  return changed === 1 ? (await manager.findOneByOrFail(PersonEntity, { signOnSubject: subject })).id : null;
}
