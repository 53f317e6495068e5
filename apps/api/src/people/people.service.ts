import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type {
  AuthorisationBody,
  ChangePersonBody,
  NewPersonBody,
  PersonView,
  TeamRef,
} from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import {
  addPerson,
  addTeam,
  authorise,
  changePerson,
  endAccess,
  endAuthorisation,
  getPerson,
  LabRecords,
  listPeople,
  listTeams,
  renameTeam,
  setPassword,
  setTeams,
  teamsOf,
} from '#libs/records/src/index.js';
import { hashPassword } from '../platform/sessions.service.js';
import type { SignedIn } from '../platform/signed-in.js';

@Injectable()
export class PeopleService {
  constructor(private readonly records: LabRecords) {}

  list(): Promise<PersonView[]> {
    return listPeople(this.records.manager);
  }

  async view(id: string): Promise<PersonView> {
    await getPerson(this.records.manager, id);
    return (await listPeople(this.records.manager, id))[0]!;
  }

  async add({ teamIds, password, ...asked }: NewPersonBody, by: SignedIn): Promise<PersonView> {
    const id = randomUUID();
    const email = asked.email.trim().toLowerCase();
    const passwordHash = password === undefined ? null : await hashPassword(password);
    await this.records.act(by.id, async ({ manager, record, now }) => {
      await addPerson(manager, { id, ...asked, email, passwordHash, createdAt: now() });
      await setTeams(manager, id, teamIds);
      const after = { roles: asked.roles, teamIds };
      await record({ kind: 'person/added', subjectId: id, after });
    });
    return this.view(id);
  }

  async change(
    id: string,
    version: number,
    { teamIds, password, ...asked }: ChangePersonBody,
    by: SignedIn,
  ): Promise<PersonView> {
    const passwordHash = password === undefined ? null : await hashPassword(password);
    await this.records.act(by.id, async ({ manager, record }) => {
      const before = await getPerson(manager, id);
      if (id === by.id) refuseLockingOneselfOut(asked);
      const was = {
        roles: before.roles,
        active: before.active,
        teamIds: (await teamsOf(manager, id)).map((team) => team.id),
      };
      await changePerson(manager, before, version, asked);
      if (teamIds) await setTeams(manager, id, teamIds);
      if (passwordHash) await setPassword(manager, id, passwordHash);
      if (passwordHash || asked.active === false) await endAccess(manager, id);
      const after = {
        roles: asked.roles ?? was.roles,
        active: asked.active ?? was.active,
        teamIds: teamIds ?? was.teamIds,
        passwordChanged: passwordHash !== null,
      };
      await record({
        kind: 'person/changed',
        subjectId: id,
        before: was,
        after,
        changesFacts: after.active !== was.active,
      });
    });
    return this.view(id);
  }

  async authorise(id: string, asked: AuthorisationBody, by: SignedIn): Promise<PersonView> {
    const [from, to] = [new Date(asked.from), asked.to ? new Date(asked.to) : null];
    if (to && to <= from) {
      throw new InvalidInput([
        fieldProblem({ field: 'to', found: asked.to, allowed: `later than ${asked.from}`, unit: '' }),
      ]);
    }
    await this.records.act(by.id, async ({ manager, record }) => {
      await getPerson(manager, id);
      await authorise(manager, {
        personId: id,
        methodCode: asked.methodCode,
        fromAt: from,
        toAt: to,
        grantedBy: by.id,
      });
      const after = { methodCode: asked.methodCode, from: asked.from, to: asked.to ?? null };
      await record({
        kind: 'person/authorised',
        subjectId: id,
        after,
      });
    });
    return this.view(id);
  }

  async endAuthorisation(id: string, authorisationId: string, by: SignedIn): Promise<PersonView> {
    await this.records.act(by.id, async ({ manager, record }) => {
      const ended = await endAuthorisation(manager, id, authorisationId);
      const before = {
        methodCode: ended.methodCode,
        from: ended.fromAt.toISOString(),
        to: ended.toAt?.toISOString() ?? null,
      };
      await record({
        kind: 'person/authorisation-ended',
        subjectId: id,
        before,
      });
    });
    return this.view(id);
  }

  teams(): Promise<TeamRef[]> {
    return listTeams(this.records.manager);
  }

  addTeam(name: string, by: SignedIn): Promise<TeamRef> {
    const team = { id: randomUUID(), name: tidy(name) };
    return this.records.act(by.id, async ({ manager, record }) => {
      await addTeam(manager, team);
      await record({
        kind: 'team/added',
        subjectId: team.id,
        after: { name: team.name },
      });
      return team;
    });
  }

  renameTeam(id: string, name: string, by: SignedIn): Promise<TeamRef> {
    const team = { id, name: tidy(name) };
    return this.records.act(by.id, async ({ manager, record }) => {
      const before = await renameTeam(manager, team);
      await record({
        kind: 'team/renamed',
        subjectId: id,
        before: { name: before },
        after: { name: team.name },
      });
      return team;
    });
  }
}

/** A name without blanks around it and with one between words. */
function tidy(name: string): string {
  return name.trim().replace(/\s+/g, ' ');
}

function refuseLockingOneselfOut({ active, roles }: ChangePersonBody): void {
  if (active === false || (roles && !roles.includes('manager'))) {
    throw new LabError('person/locks-oneself-out', 'You cannot take your own way in away. Ask another manager.');
  }
}
