import { randomBytes, randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { IsNull } from 'typeorm';
import type { Role } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { secretHash } from '../people/session.repository.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import { FeedKeyEntity } from './feed-key.entity.js';

/** Who a feed key stands for, as they are at this moment. */
export interface FeedReader {
  personId: string;
  roles: Role[];
}

const SEEN_EVERY_S = 60;

/** Keys for calendar feeds, each person's own. */
export class FeedKeyRepository {
  constructor(private readonly manager: EntityManager) {}

  ofPerson(personId: string): Promise<FeedKeyEntity[]> {
    return this.manager.find(FeedKeyEntity, { where: { personId, revokedAt: IsNull() }, order: { madeAt: 'ASC' } });
  }

  /** @returns the key, which is shown this once */
  async make(personId: string, name: string, madeAt: Date): Promise<{ id: string; key: string }> {
    const [id, key] = [randomUUID(), randomBytes(32).toString('base64url')];
    await insertRows(this.manager, FeedKeyEntity, [{ id, personId, name, keyHash: secretHash(key), madeAt }]);
    return { id, key };
  }

  /** @throws LabError `feed-key/unknown`, also for somebody else's */
  async revoke(personId: string, id: string): Promise<void> {
    const changed = await updateRows(
      this.manager,
      FeedKeyEntity,
      { id, personId, revokedAt: IsNull() },
      { revokedAt: () => 'now()' },
    );
    if (changed === 0) throw new LabError('feed-key/unknown', 'You have no such key.', { keyId: id });
  }

  /** Who holds a key, when they are still with the lab; null otherwise. */
  async findReader(key: string, now: Date): Promise<FeedReader | null> {
    const [found] = await this.manager.query<(FeedReader & { keyId: string; stale: boolean })[]>(
      `select feed_key.id as "keyId", person.id as "personId", person.roles,
         coalesce(feed_key.used_at < $2::timestamptz - interval '${SEEN_EVERY_S} seconds', true) as stale
       from feed_key join person on person.id = feed_key.person_id
       where feed_key.key_hash = $1 and feed_key.revoked_at is null and person.active`,
      [secretHash(key), now],
    );
    if (!found) return null;
    const { keyId, stale, ...reader } = found;
    if (stale) await this.manager.query('update feed_key set used_at = $2 where id = $1', [keyId, now]);
    return reader;
  }
}
