import { sayInstant } from '#libs/calendar/src/index.js';
import type { JobInList, RequestInList } from '#libs/records/src/index.js';

/** What a request waits for now, in words for all who may see it. */
export function waitsFor(
  around: Pick<RequestInList, 'request' | 'jobs' | 'missing'>,
  nowMs: number,
  timeZone: string,
): string {
  switch (around.request.state) {
    case 'draft':
      return 'Waits to be submitted';
    case 'submitted':
      return 'Waits for the lab to review it';
    case 'returned':
      return 'Waits for an answer to the lab’s question';
    case 'accepted':
    case 'in-work':
      return jobsWaitFor(around, nowMs, timeZone);
    case 'in-review':
      return 'Waits for the lab to review the results';
    case 'reported':
      return 'Waits for nothing: the report is issued';
    case 'closed':
      return 'Waits for nothing: it is closed';
    case 'declined':
      return 'Waits for nothing: the lab declined it';
    case 'withdrawn':
      return 'Waits for nothing: it was withdrawn';
  }
}

/** The job that is furthest behind says it: a request is done when its last job is. */
const FURTHEST_BEHIND = ['blocked', 'paused', 'waiting', 'ready', 'taken', 'rigged', 'running'];

function jobsWaitFor(
  { jobs, missing }: Pick<RequestInList, 'jobs' | 'missing'>,
  nowMs: number,
  timeZone: string,
): string {
  const open = jobs.filter(({ job }) => FURTHEST_BEHIND.includes(job.state));
  const last = FURTHEST_BEHIND.flatMap((state) => open.filter(({ job }) => job.state === state))[0];
  if (!last) return 'Waits for the lab to review the results';
  return jobWaitsFor(last, missing, nowMs, timeZone);
}

function jobWaitsFor({ job, booking, frameTag }: JobInList, missing: number, nowMs: number, timeZone: string): string {
  const on = frameTag === null ? '' : ` on ${frameTag}`;
  const because = job.why ? `: ${job.why}` : '';
  switch (job.state) {
    case 'blocked':
      return `${job.reference} is blocked${because}`;
    case 'paused':
      return `${job.reference} is paused${on}${because}`;
    case 'waiting':
      return `Waits for ${missing === 1 ? '1 specimen' : `${missing} specimens`} to arrive`;
    case 'taken':
    case 'rigged':
      return `${job.reference} is being set up${on}`;
    case 'running':
      return `${job.reference} is being tested${on}`;
    default:
      break;
  }
  if (job.holdWhy !== null) return `The lab holds it back: ${job.holdWhy}`;
  if (booking) return `Waits for its turn${on}, planned for ${sayInstant(booking.startsAt.getTime(), timeZone)}`;
  const conditioned = job.releasedAt !== null && job.releasedAt.getTime() > nowMs;
  return conditioned
    ? `Specimens are conditioned until ${sayInstant(job.releasedAt!.getTime(), timeZone)}`
    : 'Waits for a place in the plan';
}
