import { createHash } from 'node:crypto';

/** Separates the ids of the demo lab from all others. */
const NAMESPACE = 'northmoor-demo-lab';

/**
 * The id of a thing of the demo lab: always the same for the same kind and name, so that loading twice meets the same rows.
 *
 * Built like a version 5 UUID of RFC 9562 (SHA-1, version and variant bits set), over a namespace of our own.
 */
export function idOf(kind: string, name: string): string {
  const hash = createHash('sha1').update(`${NAMESPACE}/${kind}/${name}`).digest();
  hash[6] = (hash[6]! & 0x0f) | 0x50;
  hash[8] = (hash[8]! & 0x3f) | 0x80;
  const hex = hash.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20, 32)].join('-');
}
