import type { FeedEvent } from '#libs/calendar/src/index.js';
import type { FeedBooking } from '#libs/records/src/index.js';

/** A booking as an entry of a calendar, from the start of its changeover to its end. The same job keeps its entry from plan to plan. */
export function bookingEvent(booking: FeedBooking, timeZone: string): FeedEvent {
  const { id, kind, jobId, frameTag, planVersion, setupAt, endsAt } = booking;
  return {
    uid: kind === 'job' ? `job-${jobId}@loadtrain` : `visit-${id}@loadtrain`,
    summary: summaryOf(booking),
    description: descriptionOf(booking, timeZone),
    ...(frameTag ? { location: frameTag } : {}),
    sequence: planVersion,
    startMs: setupAt.getTime(),
    endMs: endsAt.getTime(),
  };
}

function summaryOf({ kind, jobReference, title, frameTag, tags }: FeedBooking): string {
  if (kind === 'job') return `${jobReference} ${title}`;
  return `Calibration visit ${frameTag ?? tags.join(', ')}`.trim();
}

function descriptionOf(
  { requestReference, tags, technician, setupAt, startsAt }: FeedBooking,
  timeZone: string,
): string {
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' });
  return [
    ...(requestReference ? [`Request ${requestReference}`] : []),
    ...(technician ? [`Technician ${technician}`] : []),
    ...(startsAt > setupAt ? [`Changeover from ${clock.format(setupAt)}, testing from ${clock.format(startsAt)}`] : []),
    ...(tags.length > 0 ? [`Items ${tags.join(', ')}`] : []),
  ].join('\n');
}
