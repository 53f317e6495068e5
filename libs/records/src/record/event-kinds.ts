import type { LiveEvent } from '#libs/contract/src/index.js';

/** What is the same for every event of a kind. */
interface EventKind {
  /** What kind of thing it happens to. */
  subject: string;
  /** Which open screens show something else afterwards; null when none does. */
  topic: LiveEvent['topic'] | null;
  /**
   * Whether plans are made from what it changes. Then every plan made before is stale, and a new one is made. With `when said` it
   * depends on the case, and each event has to say so: `changesFacts`.
   */
  facts: 'always' | 'never' | 'when said';
}

const request = { subject: 'request', topic: 'requests', facts: 'never' } as const;
const job = { subject: 'job', topic: 'jobs', facts: 'always' } as const;
const atBench = { subject: 'job', topic: 'jobs', facts: 'never' } as const;
const steered = { subject: 'job', topic: 'plan', facts: 'always' } as const;
const item = { subject: 'item', topic: 'items', facts: 'always' } as const;
const nonconformity = { subject: 'nonconformity', topic: 'items', facts: 'never' } as const;
const person = { subject: 'person', topic: 'people', facts: 'never' } as const;
const shift = { subject: 'shift', topic: 'people', facts: 'always' } as const;
const day = { subject: 'day', topic: 'people', facts: 'always' } as const;
const report = { subject: 'report', topic: 'reports', facts: 'never' } as const;

/** Of things that no open screen follows. */
function quiet<Subject extends string>(subject: Subject): { subject: Subject; topic: null; facts: 'never' } {
  return { subject, topic: null, facts: 'never' };
}

/** Every kind of event that the record knows. */
export const EVENT_KINDS = {
  'request/drafted': request,
  'request/edited': request,
  'request/submitted': request,
  'request/returned': request,
  'request/accepted': { ...request, facts: 'always' },
  'request/declined': request,
  'request/withdrawn': { ...request, facts: 'when said' }, // only where jobs were aborted with it
  'request/in-work': request,
  'request/in-review': request,
  'request/reported': request,
  'request/closed': request,
  'request/message': request,
  'request/promise-moved': request,
  'request/specimens-arrived': { ...request, facts: 'always' },

  'job/taken': job,
  'job/step-confirmed': { ...job, facts: 'when said' }, // only where another unit stands in
  'job/rigged': job,
  'job/running': job,
  'job/paused': job,
  'job/blocked': job,
  'job/ready': job,
  'job/done': job,
  'job/aborted': job,
  'job/unblocked': atBench, // by the plan that has a place for it again
  'job/checked': atBench,
  'job/shift-checked': atBench,
  'specimen/measured': atBench,
  'specimen/invalid': atBench,
  'specimen/not-tested': atBench,
  'specimen/valid': atBench,
  'specimen/curve-received': atBench,
  'specimen/curve-format-confirmed': atBench,
  'specimen/curve-reduced': atBench,
  'results/entered': atBench,

  'job/pinned': steered,
  'job/unpinned': steered,
  'job/held': steered,
  'job/unheld': steered,
  'plan/published': { subject: 'plan', topic: 'plan', facts: 'never' },
  'trial/published': { subject: 'plan', topic: 'plan', facts: 'always' },

  'item/registered': item,
  'item/changed': item,
  'item/in-service': item,
  'item/faulty': item,
  'item/out-of-use': item,
  'item/calibrated': item,
  'item/fault-opened': item,
  'item/fault-closed': item,
  'item/window-added': item,
  'item/window-removed': item,
  'items/imported': { ...item, subject: 'register' },
  'rig/changed': item,
  'nonconformity/opened': nonconformity,
  'nonconformity/open': nonconformity,
  'nonconformity/closed': nonconformity,

  'method/version-added': { subject: 'method', topic: 'items', facts: 'never' },
  'material/added': { subject: 'material', topic: 'items', facts: 'never' },
  'file/stored': { subject: 'file', topic: 'items', facts: 'never' },

  'person/added': person,
  'person/changed': { ...person, facts: 'when said' }, // only where somebody comes or goes
  'person/authorised': { ...person, facts: 'always' },
  'person/authorisation-ended': { ...person, facts: 'always' },
  'team/added': { ...person, subject: 'team' },
  'team/renamed': { ...person, subject: 'team' },
  'roster/added': shift,
  'roster/removed': shift,
  'calendar/closed': day,
  'calendar/reopened': day,
  'settings/changed': { subject: 'settings', topic: 'people', facts: 'always' },

  'report/prepared': report,
  'report/remarked': report,
  'report/authorised': report,
  'report/issued': report,
  'report/amendment-begun': report,

  'person/password-changed': quiet('person'),
  'session/opened': quiet('session'),
  'session/refused': quiet('person'),
  'session/ended': quiet('session'),
  'token/made': quiet('token'),
  'token/ended': quiet('token'),
  'feed-key/made': quiet('feed-key'),
  'feed-key/ended': quiet('feed-key'),
  'webhook/added': quiet('webhook'),
  'webhook/ended': quiet('webhook'),
  'export/taken': quiet('export'),
} as const satisfies Record<string, EventKind>;

export type EventName = keyof typeof EVENT_KINDS;

/** The kinds of which each event says whether it changes facts. */
export type SayingKind = {
  [Name in EventName]: (typeof EVENT_KINDS)[Name]['facts'] extends 'when said' ? Name : never;
}[EventName];

interface What {
  /** What an act did, as the record keeps it. Absent and null mean the same. */
  before?: Record<string, unknown> | null | undefined;
  after?: Record<string, unknown> | null | undefined;
  why?: string | null | undefined;
}

type Kinded =
  { kind: Exclude<EventName, SayingKind>; changesFacts?: never } | { kind: SayingKind; changesFacts: boolean };

/** An event of which somebody else knows what it happened to. */
export type Happening = What & Kinded;

/** One thing that happened. */
export type LabEvent = Happening & {
  subjectId: string;
  /** Who did it, where that is not who acts; null for the lab itself. */
  actorId?: string | null | undefined;
};

/** Whether plans are made from what an event changed. */
export function changesFacts({ kind, changesFacts: said }: Pick<LabEvent, 'kind' | 'changesFacts'>): boolean {
  const { facts } = EVENT_KINDS[kind];
  return facts === 'when said' ? said === true : facts === 'always';
}
