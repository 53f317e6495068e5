import { verify } from '@node-rs/argon2';
import { Injectable } from '@nestjs/common';
import type { NewTokenBody, OpenSessionView, OwnPasswordBody, TokenView } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, LabError } from '#libs/errors/src/index.js';
import {
  endAccess,
  findAtDoor,
  LabRecords,
  listSessions,
  listTokens,
  makeToken,
  revokeSessions,
  revokeToken,
  setPassword,
} from '#libs/records/src/index.js';
import type { Permission } from '../platform/permissions.js';
import { hashPassword } from '../platform/sessions.service.js';
import { SignInLimit } from '../platform/sign-in-limit.js';
import type { SignedIn } from '../platform/signed-in.js';

@Injectable()
export class OwnAccessService {
  constructor(
    private readonly records: LabRecords,
    private readonly limit: SignInLimit,
  ) {}

  async sessions(by: SignedIn): Promise<OpenSessionView[]> {
    const rows = await listSessions(this.records.manager, by.id);
    return rows.map(({ id, createdAt, seenAt, agent }) => ({
      id,
      openedAt: createdAt.toISOString(),
      seenAt: seenAt.toISOString(),
      agent,
      thisOne: id === by.sessionId,
    }));
  }

  endSession(id: string, by: SignedIn): Promise<void> {
    return this.records.act(by.id, async ({ manager, record }) => {
      const own = (await listSessions(manager, by.id)).some((session) => session.id === id);
      if (!own) throw new LabError('session/unknown', 'There is no such open session of yours.', { sessionId: id });
      await revokeSessions(manager, { id });
      await record({ kind: 'session/ended', subjectId: id });
    });
  }

  async changePassword({ current, next }: OwnPasswordBody, by: SignedIn): Promise<void> {
    refuseToken(by);
    const person = await findAtDoor(this.records.manager, by.email);
    const fits = () => verify(person?.passwordHash ?? '', current).catch(() => false);
    if (!(await this.limit.try({ person: by.email }, fits))) {
      throw new InvalidInput([
        fieldProblem({ field: 'current', found: 'another one', allowed: 'your present password', unit: '' }),
      ]);
    }
    const passwordHash = await hashPassword(next);
    await this.records.act(by.id, async ({ manager, record }) => {
      await setPassword(manager, by.id, passwordHash);
      const after = await endAccess(manager, by.id, by.sessionId);
      await record({
        kind: 'person/password-changed',
        subjectId: by.id,
        after,
      });
    });
  }

  async tokens(by: SignedIn): Promise<TokenView[]> {
    const rows = await listTokens(this.records.manager, by.id);
    return rows.map(({ id, name, permissions, createdAt, expiresAt, usedAt }) => ({
      id,
      name,
      permissions,
      createdAt: createdAt.toISOString(),
      expiresAt: expiresAt.toISOString(),
      usedAt: usedAt?.toISOString() ?? null,
    }));
  }

  async makeToken(asked: NewTokenBody, by: SignedIn): Promise<TokenView> {
    refuseToken(by);
    const beyond = asked.permissions.filter((one) => !by.permissions.has(one as Permission));
    if (beyond.length > 0) {
      throw new InvalidInput([
        fieldProblem({
          field: 'permissions',
          found: beyond.join(', '),
          allowed: 'permissions that you have',
          unit: '',
        }),
      ]);
    }
    const { id, token } = await this.records.act(by.id, async ({ manager, record }) => {
      const made = await makeToken(manager, { personId: by.id, ...asked });
      const after = { permissions: asked.permissions, days: asked.days };
      await record({ kind: 'token/made', subjectId: made.id, after });
      return made;
    });
    const view = (await this.tokens(by)).find((one) => one.id === id)!;
    return { ...view, token };
  }

  endToken(id: string, by: SignedIn): Promise<void> {
    return this.records.act(by.id, async ({ manager, record }) => {
      if (!(await revokeToken(manager, by.id, id)))
        throw new LabError('token/unknown', 'There is no such token of yours.', { tokenId: id });
      await record({ kind: 'token/ended', subjectId: id });
    });
  }
}

/** Whoever finds a token should not be able to make it last. */
function refuseToken(by: SignedIn): void {
  if (by.sessionId === null) throw new LabError('access/forbidden', 'Sign in for this; a token is not enough.');
}
