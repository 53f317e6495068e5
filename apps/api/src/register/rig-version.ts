import { createHash } from 'node:crypto';
import type { RigLinkEntity } from '#libs/records/src/index.js';

const MOST = 1_000_000_000; // an ETag of ours has nine digits at most

/**
 * The version of what is on a frame: a figure that is another one as soon as something else hangs there, or in another place,
 * whoever changed it. Made from the links themselves, because a setup at the bench and a rig of another frame change them, too.
 */
export function rigVersion(links: readonly Pick<RigLinkEntity, 'itemId' | 'role'>[]): number {
  const text = JSON.stringify(links.map(({ itemId, role }) => `${itemId} ${role}`).sort());
  return createHash('sha256').update(text).digest().readUInt32BE(0) % MOST;
}
