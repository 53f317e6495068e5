import type { Instant, PersonRef } from './platform.js';
import type { Role } from './states.js';

/** Somebody of the demo lab, offered on the sign-in page. */
export interface DemoPerson {
  email: string;
  name: string;
  role: Role;
  password: string;
}

export interface NewPersonBody {
  name: string;
  email: string;
  roles: Role[];
  teamIds: string[];
  /** Left out where people come by single sign-on only. */
  password?: string;
}

export interface ChangePersonBody {
  name?: string;
  roles?: Role[];
  teamIds?: string[];
  active?: boolean;
  /** A new password; every session of the person ends. */
  password?: string;
}

export interface AuthorisationBody {
  methodCode: string;
  from: Instant;
  to?: Instant | null;
}

export interface OwnPasswordBody {
  current: string;
  next: string;
}

/** A browser in which somebody is signed in. */
export interface OpenSessionView {
  id: string;
  openedAt: Instant;
  seenAt: Instant;
  agent: string;
  /** The one that asks. */
  thisOne: boolean;
}

export interface NewTokenBody {
  name: string;
  /** What the program may do; never more than the person may. */
  permissions: string[];
  /** How long it is good for, days. */
  days: number;
}

export interface TokenView {
  id: string;
  name: string;
  permissions: string[];
  createdAt: Instant;
  expiresAt: Instant;
  usedAt: Instant | null;
  /** Only in the answer that made it. */
  token?: string;
}

export interface RosterShiftBody {
  personId: string;
  startsAt: Instant;
  endsAt: Instant;
}

export interface RosterShiftView {
  id: string;
  person: PersonRef;
  startsAt: Instant;
  endsAt: Instant;
}

/** A day on which the lab is closed, in its own time zone. */
export interface ClosedDay {
  day: string;
  name: string;
}

export interface RosterView {
  shifts: RosterShiftView[];
  closedDays: ClosedDay[];
}

/** One part of the system, in words: what is wrong with it and what works all the same. */
export interface StatusPart {
  part: string;
  state: 'well' | 'trouble';
  sentence: string;
}

export interface StatusView {
  parts: StatusPart[];
  at: Instant;
}
