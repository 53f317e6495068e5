import ICAL from 'ical.js';
import { InvalidInput } from '#libs/errors/src/index.js';
import { icsFeed } from './index.js';
import type { FeedEvent } from './index.js';

const STAMP_MS = Date.parse('2025-10-20T08:00:00Z');
const AWKWARD = 'Fork crown, batch 2; "cold" C:\\north\nsoak 2 h at −30 °C — then pull 🚲 '.repeat(4).trim();

const EVENT: FeedEvent = Object.freeze({
  uid: 'job-4711@loadtrain',
  startMs: Date.parse('2025-10-26T00:30:00Z'),
  endMs: Date.parse('2025-10-26T01:30:00Z'),
  summary: AWKWARD,
  description: 'Set up: 25 min',
  location: 'Frame F3',
  sequence: 4,
});

const feed = (...events: FeedEvent[]) => icsFeed({ name: 'Frame F3, plan', stampMs: STAMP_MS, events });

// RFC 5545; read back by ical.js 2.2.1, an independent reader.
describe('icsFeed', () => {
  const component = new ICAL.Component(ICAL.parse(feed(EVENT)) as string | unknown[]);
  const read = new ICAL.Event(component.getFirstSubcomponent('vevent')!);

  it('is read back with the same text, times and identity', () => {
    expect(read.summary).toBe(AWKWARD);
    expect(read.uid).toBe(EVENT.uid);
    expect(read.sequence).toBe(4);
    expect(read.startDate.toJSDate().getTime()).toBe(EVENT.startMs);
    expect(read.endDate.toJSDate().getTime()).toBe(EVENT.endMs);
    expect(read.startDate.zone).toBe(ICAL.Timezone.utcTimezone);
  });

  it('says when it was made, and its name', () => {
    expect(feed(EVENT)).toContain('\r\nDTSTAMP:20251020T080000Z\r\n');
    expect(feed(EVENT)).toContain('\r\nNAME:Frame F3\\, plan\r\n'); // ical.js does not know RFC 7986, so it is read as text
    expect(component.getFirstPropertyValue('version')).toBe('2.0');
  });

  it('ends every line with CRLF and keeps each to 75 octets, without cutting a character', () => {
    const text = feed(EVENT);
    const lines = text.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(text.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(text).not.toContain('\ufffd');
  });

  // 75 octets is the longest line (RFC 5545 3.1): SUMMARY: takes 8 of them.
  it('folds a line of 76 octets but not one of 75', () => {
    expect(feed({ ...EVENT, summary: 'x'.repeat(67) })).toContain(`SUMMARY:${'x'.repeat(67)}\r\n`);
    expect(feed({ ...EVENT, summary: 'x'.repeat(68) })).toContain(`SUMMARY:${'x'.repeat(67)}\r\n x\r\n`);
  });

  it('cannot be made to carry a line of somebody else', () => {
    const text = feed({ ...EVENT, summary: 'a\r\nBEGIN:VALARM\u0000' });
    expect(text).toContain('SUMMARY:a\\nBEGIN:VALARM \r\n');
  });

  it('marks a cancelled entry', () => {
    expect(feed({ ...EVENT, cancelled: true })).toContain('STATUS:CANCELLED');
  });

  it('keeps each line to 75 octets whatever the characters weigh', () => {
    for (const character of ['x', 'é', '€', '🚲']) {
      const text = feed({ ...EVENT, summary: character.repeat(80) });
      const octets = text.split('\r\n').map((line) => Buffer.byteLength(line));
      const weight = Buffer.byteLength(character);
      expect(Math.max(...octets)).toBeLessThanOrEqual(75);
      expect(octets.filter((count) => count > 75 - weight && count <= 75).length).toBeGreaterThan(0);
    }
  });

  it('is a calendar even without entries', () => {
    expect(new ICAL.Component(ICAL.parse(feed()) as string | unknown[]).getAllSubcomponents('vevent')).toEqual([]);
  });

  it('takes an entry of one second and refuses a shorter one or one without identity', () => {
    expect(() => feed({ ...EVENT, endMs: EVENT.startMs + 1000 })).not.toThrow();
    expect(() => feed({ ...EVENT, startMs: EVENT.startMs + 500, endMs: EVENT.startMs + 1400 })).not.toThrow();
    expect(() => feed({ ...EVENT, endMs: EVENT.startMs + 999 })).toThrow(InvalidInput);
    expect(() => feed({ ...EVENT, uid: '' })).toThrow(/uid is missing/);
  });
});
