import type { Role } from './states.js';

/** An instant in HTTP: RFC 3339 in UTC, e.g. `2026-11-25T12:48:00.000Z`. */
export type Instant = string;

/** A day of the lab's calendar, e.g. `2026-11-25`. */
export type Day = string;

/** One page of a list; `next` is the cursor of the page after it, null at the end. */
export interface Page<Row> {
  rows: Row[];
  next: string | null;
  total?: number;
}

/** What is wrong with one field: what was found, what is allowed, and what to do, in words. */
export interface FieldError {
  field: string;
  found: string;
  allowed: string;
  unit?: string;
  sentence: string;
}

/** An error answer: problem details by RFC 9457. */
export interface Problem {
  type: string;
  title: string;
  status: number;
  detail: string;
  instance?: string;
  errors?: FieldError[];
  /** Facts of the refusal, e.g. the state it is in and the ways out of it. */
  facts?: Record<string, unknown>;
}

export interface PersonRef {
  id: string;
  name: string;
}

export interface TeamRef {
  id: string;
  name: string;
}

export interface SignInBody {
  email: string;
  password: string;
}

/** Who is signed in, and what the screens may offer. */
export interface SessionView {
  person: PersonRef & { email: string; roles: Role[]; teams: TeamRef[] };
  permissions: string[];
  /** `now` is the time by the lab's clock when this was answered. */
  lab: { name: string; timeZone: string; now: Instant };
  demo: boolean;
}

export interface PersonView extends PersonRef {
  email: string;
  roles: Role[];
  teams: TeamRef[];
  active: boolean;
  authorisations: { id: string; methodCode: string; designation: string; from: Instant; to: Instant | null }[];
  version: number;
}

/** `set-aside` is kept for a worker that knows the kind of the task, such as one of a newer version. */
export type TaskState = 'waiting' | 'running' | 'set-aside' | 'done' | 'failed' | 'cancelled';

/** Long work that the worker does: its state and progress come from our own tables. */
export interface TaskView {
  id: string;
  name: string;
  state: TaskState;
  progressPct: number;
  message: string;
  error: string | null;
  result?: Record<string, unknown> | null;
}

/** A change made elsewhere, as it comes over `/live`: what kind of thing, and which. */
export interface LiveEvent {
  topic: 'requests' | 'jobs' | 'plan' | 'items' | 'results' | 'reports' | 'tasks' | 'people' | 'notices';
  id: string;
}

export interface RecordEventView {
  seq: string;
  at: Instant;
  actor: PersonRef | null;
  kind: string;
  subjectKind: string;
  subjectId: string;
  before: Record<string, unknown> | null;
  after: Record<string, unknown> | null;
  why: string | null;
  hash: string;
}
