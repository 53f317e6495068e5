import { hash, verify } from '@node-rs/argon2';
import { Inject, Injectable } from '@nestjs/common';
import { LabError } from '#libs/errors/src/index.js';
import type { Holder } from '#libs/records/src/index.js';
import {
  findAtDoor,
  findSessionHolder,
  findTokenHolder,
  isStillIn,
  LabRecords,
  openSession,
  endAccess,
  revokeSessions,
} from '#libs/records/src/index.js';
import type { ApiConfig } from '../config.js';
import { API_CONFIG } from './api-config.js';
import { CurrentLab } from './current-lab.js';
import { permissionsOf } from './permissions.js';
import type { Permission } from './permissions.js';
import { SignInLimit } from './sign-in-limit.js';
import type { SignedIn } from './signed-in.js';

// argon2id (the library's own default) with the least cost that OWASP's Password Storage Cheat Sheet names for it.
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

interface SignInAttempt {
  email: string;
  password: string;
  /** The network address it comes from. */
  place: string;
  /** What the browser calls itself. */
  agent: string;
}

export function hashPassword(password: string): Promise<string> {
  return hash(password, COST);
}

/** Lets people in and out, and knows who is in. */
@Injectable()
export class SessionsService {
  private decoy: Promise<string> | null = null;

  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
    private readonly limit: SignInLimit,
    @Inject(API_CONFIG) private readonly config: ApiConfig,
  ) {}

  /**
   * @returns the token for the cookie
   * @throws {LabError} `sign-in/wrong-credentials`, the same for a wrong password and an unknown address; `sign-in/too-many`
   */
  async signIn({ email, password, place, agent }: SignInAttempt): Promise<string> {
    const person = await findAtDoor(this.records.manager, email);
    const fits = await this.limit.try({ person: email, place }, async () => {
      const right = await verify(person?.passwordHash ?? (await this.decoyHash()), password).catch(() => false);
      return right && person?.passwordHash != null && person.active;
    });
    if (!person || !fits) {
      if (person)
        await this.records.act(null, ({ record }) => record({ kind: 'session/refused', subjectId: person.id }));
      throw new LabError('sign-in/wrong-credentials', 'This address and password do not belong together. Check both.');
    }
    return this.open(person.id, agent);
  }

  /** Opens a session for somebody who has proved who they are. */
  open(personId: string, agent: string): Promise<string> {
    return this.records.act(personId, async ({ manager, record }) => {
      const { id, token } = await openSession(manager, personId, this.config.sessionHours, agent);
      await record({ kind: 'session/opened', subjectId: id });
      return token;
    });
  }

  /** Ends one session, or with `all` every way in that the person has: sessions, tokens and keys of feeds. */
  end(by: SignedIn, all: boolean): Promise<void> {
    return this.records.act(by.id, async ({ manager, record, nothing }) => {
      if (!by.sessionId) return nothing(undefined);
      const after = all
        ? await endAccess(manager, by.id)
        : { ended: await revokeSessions(manager, { id: by.sessionId }) };
      await record({
        kind: 'session/ended',
        subjectId: by.sessionId,
        after,
      });
    });
  }

  findBySession(token: string): Promise<SignedIn | null> {
    return this.find((stamp) => findSessionHolder(this.records.manager, token, this.config.sessionIdleMin, stamp));
  }

  /** Whether what somebody came in with still opens: for answers that have no end of their own. */
  isStillIn({ sessionId, tokenId }: Pick<SignedIn, 'sessionId' | 'tokenId'>): Promise<boolean> {
    return isStillIn(this.records.manager, { sessionId, tokenId, idleMin: this.config.sessionIdleMin });
  }

  findByToken(token: string): Promise<SignedIn | null> {
    return this.find((stamp) => findTokenHolder(this.records.manager, token, stamp));
  }

  /** The one question that every request asks tells as well whether what is kept of the lab still holds. */
  private async find(ask: (stamp: string | null) => Promise<Holder | null>): Promise<SignedIn | null> {
    const { stamp } = this.current;
    const asked = { askedAtMs: performance.now() };
    const holder = await ask(stamp);
    if (!holder) return null;
    const { factsChanged, ...person } = holder;
    if (stamp !== null && !factsChanged) this.current.stillTrue(stamp, asked);
    return { ...signedInOf(person), ...asked };
  }

  /** Checked for unknown addresses, so that the time an answer takes does not tell who is known. */
  private decoyHash(): Promise<string> {
    return (this.decoy ??= hashPassword('nobody has this password'));
  }
}

function signedInOf({ tokenPermissions, ...holder }: Omit<Holder, 'factsChanged'>): Omit<SignedIn, 'askedAtMs'> {
  const byRole = permissionsOf(holder.roles);
  const narrowed = tokenPermissions && tokenPermissions.filter((one) => byRole.has(one as Permission));
  return { ...holder, permissions: narrowed ? new Set(narrowed as Permission[]) : byRole };
}
