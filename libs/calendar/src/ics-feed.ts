import { InvalidInput, fieldProblem } from '#libs/errors/src/index.js';
import { MS_PER_SECOND } from './time-window.js';
import { foldLine } from './fold-line.js';
import type { TimeWindow } from './time-window.js';

/** One entry of a calendar feed. */
export interface FeedEvent extends TimeWindow {
  /** The same for the same thing in every feed and for ever, e.g. `job-4711@loadtrain`. */
  uid: string;
  summary: string;
  description?: string;
  location?: string;
  /** Counts the changes of the entry, from 0, so that readers know the newer of two. */
  sequence?: number;
  cancelled?: boolean;
}

export interface Feed {
  /** What readers call the calendar. */
  name: string;
  /** When the feed was made, UTC ms. */
  stampMs: number;
  events: readonly FeedEvent[];
}

const CRLF = '\r\n';

/**
 * A calendar feed as text, RFC 5545: CRLF lines of at most 75 octets, texts escaped, times in UTC to the second.
 * The calendar's name and refresh interval follow RFC 7986.
 *
 * @throws {InvalidInput} when an event has no uid or does not last a second at least (RFC 5545 3.8.2.2)
 */
export function icsFeed({ name, stampMs, events }: Feed): string {
  const problems = events.flatMap(eventProblems);
  if (problems.length > 0) throw new InvalidInput(problems);
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Loadtrain//Lab plan//EN',
    'METHOD:PUBLISH',
    `NAME:${escaped(name)}`,
    'REFRESH-INTERVAL;VALUE=DURATION:PT15M',
    ...events.flatMap((event) => eventLines(event, stampMs)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => foldLine(line) + CRLF).join('');
}

function eventLines(event: FeedEvent, stampMs: number): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(event.uid)}`,
    `DTSTAMP:${utc(stampMs)}`,
    `DTSTART:${utc(event.startMs)}`,
    `DTEND:${utc(event.endMs)}`,
    `SEQUENCE:${event.sequence ?? 0}`,
    `STATUS:${event.cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    `SUMMARY:${escaped(event.summary)}`,
    ...(event.description ? [`DESCRIPTION:${escaped(event.description)}`] : []),
    ...(event.location ? [`LOCATION:${escaped(event.location)}`] : []),
    'END:VEVENT',
  ];
}

function eventProblems({ uid, startMs, endMs }: FeedEvent, index: number) {
  const noUid = fieldProblem({ field: `events[${index}].uid`, found: uid, allowed: 'a text', unit: '' });
  const lasts = Math.floor(endMs / MS_PER_SECOND) - Math.floor(startMs / MS_PER_SECOND);
  const tooShort = fieldProblem({ field: `events[${index}]`, found: lasts, allowed: 'at least 1', unit: 's' });
  return [...(uid ? [] : [noUid]), ...(lasts >= 1 ? [] : [tooShort])];
}

/** Form 2 of RFC 5545 3.3.5, e.g. `20251026T010000Z`. */
function utc(instantMs: number): string {
  return new Date(instantMs).toISOString().replace(/\.\d{3}|[-:]/g, '');
}

/** RFC 5545 3.3.11. */
function escaped(text: string): string {
  return withoutControls(text.replace(/\r\n?/g, '\n'))
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\n/g, '\\n');
}

/** Control characters other than the line feed have no place in a text. */
function withoutControls(text: string): string {
  return Array.from(text, (one) => (one === '\n' || (one >= ' ' && one !== '\u007f') ? one : ' ')).join('');
}
