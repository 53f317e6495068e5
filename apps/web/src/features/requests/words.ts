import type { JobState, RequestState } from '#libs/contract/src/index.js';

/** The straight way of a request; side ways are shown at the step where they left it. */
export const REQUEST_WAY = [
  { key: 'draft', label: 'draft' },
  { key: 'submitted', label: 'submitted' },
  { key: 'accepted', label: 'accepted' },
  { key: 'in-work', label: 'in work' },
  { key: 'in-review', label: 'in review' },
  { key: 'reported', label: 'reported' },
  { key: 'closed', label: 'closed' },
] as const;

/** Where a request stands on that way, and the word of a side way. */
export function placeOf(state: RequestState): { at: string; aside: string | null } {
  if (state === 'returned') return { at: 'submitted', aside: 'returned' };
  if (state === 'declined') return { at: 'submitted', aside: 'declined' };
  if (state === 'withdrawn') return { at: 'accepted', aside: 'withdrawn' };
  return { at: state, aside: null };
}

export const REQUEST_STATE_WORDS: Record<RequestState, string> = {
  draft: 'draft',
  submitted: 'submitted',
  returned: 'returned with a question',
  accepted: 'accepted',
  'in-work': 'in work',
  'in-review': 'in review',
  reported: 'reported',
  closed: 'closed',
  declined: 'declined',
  withdrawn: 'withdrawn',
};

export const JOB_STATE_WORDS: Record<JobState, string> = {
  waiting: 'waits for specimens',
  ready: 'ready',
  taken: 'taken',
  rigged: 'rigged',
  running: 'running',
  paused: 'paused',
  blocked: 'blocked',
  done: 'done',
  aborted: 'aborted',
};

export const DISPOSALS = [
  { value: 'return', label: 'Return them to us' },
  { value: 'keep-90-days', label: 'Keep them for 90 days' },
  { value: 'discard', label: 'Discard them' },
] as const;
