import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { Role, TeamRef } from '#libs/contract/src/index.js';
import { factsChangedSql } from '../platform/facts.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import { insertRows } from '../platform/write-rows.js';
import { ApiTokenEntity } from './api-token.entity.js';
import { SessionEntity } from './session.entity.js';
import { SignInAttemptEntity } from './sign-in-attempt.entity.js';

/** Who holds a session or token, as it stands at this moment: a role taken away counts at once. */
export interface Holder {
  id: string;
  name: string;
  email: string;
  roles: Role[];
  teams: TeamRef[];
  sessionId: string | null;
  tokenId: string | null;
  /** Null for sessions, which may do all that the roles may. */
  tokenPermissions: string[] | null;
  /** Whether a fact was changed since the stamp that came with the question; false when none came. */
  factsChanged: boolean;
}

const SEEN_EVERY_S = 60; // a request writes the time of its session at most so often

/** Opens a session. @returns the token for the cookie, which is kept nowhere else */
export async function openSession(
  manager: EntityManager,
  personId: string,
  hours: number,
  agent: string,
): Promise<{ id: string; token: string }> {
  const token = randomBytes(32).toString('base64url');
  const id = randomUUID();
  const expiresAt = () => `now() + ${Math.round(hours * 60)} * interval '1 minute'`;
  const row = { id, tokenHash: secretHash(token), personId, agent: agent.slice(0, 200), expiresAt };
  await insertRows(manager, SessionEntity, [row]);
  return { id, token };
}

/** @param stamp of facts that are kept; with the same question they are found to hold still, or not */
export async function findSessionHolder(
  manager: EntityManager,
  token: string,
  idleMin: number,
  stamp: string | null,
): Promise<Holder | null> {
  const values = [secretHash(token), stamp, idleMin];
  const [found] = await prepared<Holder & { stale: boolean }>(manager, SESSION_HOLDER, values);
  if (!found) return null;
  const { stale, ...holder } = found;
  if (stale) await manager.query('update session set seen_at = now() where id = $1', [holder.sessionId]);
  return holder;
}

/** @param stamp as for a session */
export async function findTokenHolder(
  manager: EntityManager,
  token: string,
  stamp: string | null,
): Promise<Holder | null> {
  const values = [secretHash(token), stamp];
  const [found] = await prepared<Holder & { stale: boolean }>(manager, TOKEN_HOLDER, values);
  if (!found) return null;
  const { stale, ...holder } = found;
  if (stale) await manager.query('update api_token set used_at = now() where id = $1', [holder.tokenId]);
  return holder;
}

const HOLDER = `person.id, person.name, person.email, person.roles,
  coalesce((select jsonb_agg(jsonb_build_object('id', team.id, 'name', team.name) order by team.name)
    from team join team_member on team_member.team_id = team.id where team_member.person_id = person.id), '[]') as teams,
  ${factsChangedSql('$2')} as "factsChanged"`;

const SESSION_HOLDER: Prepared = {
  name: 'session-holder',
  text: `
    select ${HOLDER}, session.id as "sessionId", null as "tokenId", null as "tokenPermissions",
      session.seen_at < now() - interval '${SEEN_EVERY_S} seconds' as stale
    from session join person on person.id = session.person_id
    where session.token_hash = $1 and person.active and session.revoked_at is null and session.expires_at > now()
      and session.seen_at > now() - $3 * interval '1 minute'`,
};

const TOKEN_HOLDER: Prepared = {
  name: 'token-holder',
  text: `
    select ${HOLDER}, null as "sessionId", api_token.permissions as "tokenPermissions", api_token.id as "tokenId",
      coalesce(api_token.used_at < now() - interval '${SEEN_EVERY_S} seconds', true) as stale
    from api_token join person on person.id = api_token.person_id
    where api_token.token_hash = $1 and person.active and api_token.revoked_at is null and api_token.expires_at > now()`,
};

/** Whether a session, or a token, still lets its person in. */
export async function isStillIn(
  manager: EntityManager,
  { sessionId, tokenId, idleMin }: { sessionId: string | null; tokenId: string | null; idleMin: number },
): Promise<boolean> {
  const [row] = await manager.query<{ open: boolean }[]>(
    `select exists (select 1 from session join person on person.id = session.person_id where session.id = $1 and person.active
         and revoked_at is null and expires_at > now() and seen_at > now() - $3 * interval '1 minute')
       or exists (select 1 from api_token token join person on person.id = token.person_id where token.id = $2 and person.active
         and token.revoked_at is null and token.expires_at > now()) as open`,
    [sessionId, tokenId, idleMin],
  );
  return row!.open;
}

/** Ends every way in that a person has but one session: other sessions, tokens, keys of feeds. @returns how many of each were open */
export async function endAccess(
  manager: EntityManager,
  personId: string,
  exceptSessionId: string | null = null,
): Promise<{ ended: number; tokens: number; feedKeys: number }> {
  const end = async (table: 'api_token' | 'feed_key') =>
    (
      await manager.query<[unknown, number]>(
        `update ${table} set revoked_at = now() where person_id = $1 and revoked_at is null`,
        [personId],
      )
    )[1];
  const ended = await revokeSessions(manager, { personId, except: exceptSessionId });
  return { ended, tokens: await end('api_token'), feedKeys: await end('feed_key') };
}

/** Ends one session, or all of a person (but one). @returns how many were open */
export async function revokeSessions(
  manager: EntityManager,
  which: { id: string } | { personId: string; except?: string | null },
): Promise<number> {
  const [clause, values] =
    'id' in which
      ? ['id = $1', [which.id]]
      : ['person_id = $1 and ($2::uuid is null or id <> $2)', [which.personId, which.except ?? null]];
  const statement = `update session set revoked_at = now() where ${clause} and revoked_at is null`;
  const [, ended] = await manager.query<[unknown, number]>(statement, values);
  return ended;
}

/** Makes a token for a program. @returns the token, which is shown this once */
export async function makeToken(
  manager: EntityManager,
  wanted: { personId: string; name: string; permissions: string[]; days: number },
): Promise<{ id: string; token: string }> {
  const token = `lab_${randomBytes(32).toString('base64url')}`;
  const id = randomUUID();
  const { days, ...row } = wanted;
  const expiresAt = () => `now() + ${Math.round(days)} * interval '1 day'`;
  await insertRows(manager, ApiTokenEntity, [{ id, ...row, tokenHash: secretHash(token), expiresAt }]);
  return { id, token };
}

/** Counts a try against each of these subjects. @returns for each its id, and how many there were in the last minutes, with this one */
export async function countTries(
  manager: EntityManager,
  subjects: readonly string[],
  minutes: number,
): Promise<{ id: string; tries: number }[]> {
  const hashes = subjects.map(secretHash);
  // One statement does not see what it writes itself, and would not see tries that are under way at the same moment.
  const made = await manager.query<{ id: string; subject: string }[]>(
    'insert into sign_in_attempt (subject) select unnest($1::text[]) returning id, subject',
    [hashes],
  );
  const counts = await manager.query<{ subject: string; tries: number }[]>(
    `select subject, count(*)::int as tries from sign_in_attempt
     where subject = any($1) and at > now() - $2 * interval '1 minute' group by subject`,
    [hashes, minutes],
  );
  return hashes.map((hash) => ({
    id: made.find(({ subject }) => subject === hash)!.id,
    tries: counts.find(({ subject }) => subject === hash)?.tries ?? 1,
  }));
}

/** Takes tries back that do not count. */
export async function forgetTries(manager: EntityManager, ids: readonly string[]): Promise<void> {
  await manager.query('delete from sign_in_attempt where id = any($1)', [ids]);
}

/** After a password that was right, earlier slips no longer count. */
export async function forgetTriesOf(manager: EntityManager, subject: string): Promise<void> {
  await manager.delete(SignInAttemptEntity, { subject: secretHash(subject) });
}

/** Tokens are long and random, so that a plain hash is enough to make a stolen table useless. */
export function secretHash(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

export async function listSessions(manager: EntityManager, personId: string): Promise<SessionEntity[]> {
  return manager
    .createQueryBuilder(SessionEntity, 'session')
    .where('session.personId = :personId and session.revokedAt is null and session.expiresAt > now()', { personId })
    .orderBy('session.seenAt', 'DESC')
    .getMany();
}

export async function listTokens(manager: EntityManager, personId: string): Promise<ApiTokenEntity[]> {
  return manager
    .createQueryBuilder(ApiTokenEntity, 'token')
    .where('token.personId = :personId and token.revokedAt is null', { personId })
    .orderBy('token.createdAt', 'DESC')
    .getMany();
}

/** @returns whether the person has such a token that was good until now */
export async function revokeToken(manager: EntityManager, personId: string, id: string): Promise<boolean> {
  const where = 'update api_token set revoked_at = now() where id = $1 and person_id = $2 and revoked_at is null';
  const [, ended] = await manager.query<[unknown, number]>(where, [id, personId]);
  return ended > 0;
}
