import type { RecordEntry } from '../record/append.js';
import type { EventName } from '../record/event-kinds.js';

/** What an event is about, as far as it names somebody or something. */
export interface Around {
  /** What people call it, e.g. `R-2031`. */
  reference: string;
  title: string;
  path: string;
  /** Whose request it is or belongs to; null for what belongs to the lab. */
  teamId: string | null;
  requesterId: string | null;
  technicianId: string | null;
}

/** `team` is the requester and the requesters of the team; the others are who their name says. */
export type Audience = 'team' | 'managers' | 'technician';

export interface NoticeRule {
  to: readonly Audience[];
  /** Makes the headline, after the name of what it is about: `was returned`. */
  verb: string;
  sentence(about: Around, event: RecordEntry): string;
  /** Whether this one is worth a word; all are when absent. */
  when?(event: RecordEntry): boolean;
}

const because = ({ why }: RecordEntry, otherwise: string): string => (why ? `${otherwise} ${why}` : otherwise);

/** A rule for what happens to a request: the team hears that it `was …`. */
function toTeam(verb: string, sentence: string): NoticeRule {
  return {
    to: ['team'],
    verb,
    sentence: ({ title }, event) => because(event, `${title}: ${sentence}`),
  };
}

function toManagers(verb: string, sentence: string): NoticeRule {
  return { ...toTeam(verb, sentence), to: ['managers'] };
}

/** Which events tell whom, and in which words. Whoever did it is not told of it. */
export const NOTICE_RULES: Readonly<Partial<Record<EventName, NoticeRule>>> = {
  'request/submitted': toManagers('was submitted', 'it waits for its review.'),
  'request/withdrawn': toManagers('was withdrawn', 'nothing more is to be done for it.'),
  'request/returned': toTeam('was returned', 'the lab has a question before it can accept it.'),
  'request/accepted': toTeam('was accepted', 'the lab will run it and give you a date.'),
  'request/declined': toTeam('was declined', 'the lab cannot run it.'),
  'request/in-work': toTeam('is in work', 'the first of its jobs has started.'),
  'request/reported': toTeam('is reported', 'its report is issued and can be read.'),
  'request/promise-moved': toTeam('has another date', 'the promised date has moved by more than four hours.'),
  'request/message': {
    to: ['team', 'managers'],
    verb: 'has a new message',
    sentence: ({ title }, { after }) => `${title}: ${short(after?.['body'])}`,
  },
  'report/issued': {
    ...toTeam('was issued anew', 'the report that you have is superseded by a new revision.'),
    when: ({ after }) => Number(after?.['revision'] ?? 1) > 1,
  },
  'job/blocked': toManagers('is blocked', 'something failed, and it goes back to planning.'),
  'job/aborted': {
    ...toTeam('was aborted', 'you had taken it; nothing more of it is to be run.'),
    to: ['technician'],
  },
  'job/unblocked': {
    ...toTeam('can be taken again', 'it was blocked while you had it, and has a place in the plan again.'),
    to: ['technician'],
  },
  'job/ready': {
    ...toTeam('can be taken again', 'it was blocked while you had it, and the manager has released it.'),
    to: ['technician'],
    when: ({ before }) => before?.['state'] === 'blocked',
  },
  'item/fault-opened': toManagers('has a fault', 'it is not used until it is repaired.'),
  'nonconformity/opened': toManagers('was opened', 'it waits for a decision.'),
};

const MOST_CHARACTERS = 200;

function short(text: unknown): string {
  if (typeof text !== 'string') return '';
  return text.length > MOST_CHARACTERS ? `${text.slice(0, MOST_CHARACTERS)}…` : text;
}
