import type { Request } from 'express';
import type { Role, TeamRef } from '#libs/contract/src/index.js';
import type { Permission } from './permissions.js';

/** Who makes a request, as the guard has established it. */
export interface SignedIn {
  id: string;
  name: string;
  email: string;
  roles: readonly Role[];
  teams: readonly TeamRef[];
  /** By role, and for a token narrowed to what it names. */
  permissions: ReadonlySet<Permission>;
  /** Null when a token was used. */
  sessionId: string | null;
  /** Null unless a token was used. */
  tokenId: string | null;
  /** When the guard asked who it is, by the clock of `performance.now()`: what is told must be at least as new. */
  askedAtMs: number;
}

export type LabRequest = Request & { signedIn?: SignedIn; requestId: string };
