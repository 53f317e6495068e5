/** Where a request can be. Design: the lifecycle of a request. */
export const REQUEST_STATES = [
  'draft',
  'submitted',
  'returned',
  'accepted',
  'in-work',
  'in-review',
  'reported',
  'closed',
  'declined',
  'withdrawn',
] as const;
export type RequestState = (typeof REQUEST_STATES)[number];

export type RequestMove =
  'submit' | 'accept' | 'return' | 'decline' | 'withdraw' | 'begin' | 'review' | 'report' | 'reopen' | 'close';

/** A move: where it may start, where it leads, and whose permission it needs (`system` moves follow from other acts). */
export interface Move<State extends string> {
  from: readonly State[];
  to: State;
  by: 'requester' | 'manager' | 'technician' | 'system';
}

export const REQUEST_MOVES: Record<RequestMove, Move<RequestState>> = {
  submit: { from: ['draft', 'returned'], to: 'submitted', by: 'requester' },
  accept: { from: ['submitted'], to: 'accepted', by: 'manager' },
  return: { from: ['submitted'], to: 'returned', by: 'manager' },
  decline: { from: ['submitted'], to: 'declined', by: 'manager' },
  withdraw: { from: ['draft', 'submitted', 'returned', 'accepted'], to: 'withdrawn', by: 'requester' },
  begin: { from: ['accepted'], to: 'in-work', by: 'system' },
  review: { from: ['in-work'], to: 'in-review', by: 'system' },
  reopen: { from: ['in-review'], to: 'in-work', by: 'manager' },
  report: { from: ['in-review'], to: 'reported', by: 'system' },
  close: { from: ['reported'], to: 'closed', by: 'manager' },
};

/** Where a job can be. */
export const JOB_STATES = [
  'waiting',
  'ready',
  'taken',
  'rigged',
  'running',
  'paused',
  'blocked',
  'done',
  'aborted',
] as const;
export type JobState = (typeof JOB_STATES)[number];

export type JobMove =
  | 'release'
  | 'unrelease'
  | 'take'
  | 'give-back'
  | 'rig'
  | 'start'
  | 'pause'
  | 'resume'
  | 'block'
  | 'unblock'
  | 'finish'
  | 'abort';

export const JOB_MOVES: Record<JobMove, Move<JobState>> = {
  release: { from: ['waiting'], to: 'ready', by: 'system' },
  unrelease: { from: ['ready'], to: 'waiting', by: 'system' },
  take: { from: ['ready'], to: 'taken', by: 'technician' },
  'give-back': { from: ['taken', 'rigged'], to: 'ready', by: 'technician' },
  rig: { from: ['taken'], to: 'rigged', by: 'technician' },
  start: { from: ['rigged'], to: 'running', by: 'technician' },
  pause: { from: ['running'], to: 'paused', by: 'technician' },
  resume: { from: ['paused'], to: 'running', by: 'technician' },
  block: { from: ['taken', 'rigged', 'running', 'paused'], to: 'blocked', by: 'technician' },
  unblock: { from: ['blocked'], to: 'ready', by: 'manager' },
  finish: { from: ['running'], to: 'done', by: 'technician' },
  abort: {
    from: ['waiting', 'ready', 'taken', 'rigged', 'running', 'paused', 'blocked'],
    to: 'aborted',
    by: 'manager',
  },
};

export type ReportState = 'draft' | 'issuing' | 'issued' | 'superseded';
export type SpecimenFate = 'expected' | 'arrived' | 'tested' | 'invalid' | 'not-tested';
export type Role = 'requester' | 'technician' | 'manager' | 'auditor';

/** The moves that lead out of a state: what a 409 answer names as the ways out. */
export function waysOut<State extends string, Name extends string>(
  moves: Record<Name, Move<State>>,
  state: State,
): Name[] {
  return (Object.keys(moves) as Name[]).filter((name) => moves[name].from.includes(state));
}
