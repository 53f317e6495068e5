import { performedMsOf } from './calibration-days.js';

// Europe/London is an hour ahead of UTC on this day (common practice, IANA time zone database).
const ZONE = 'Europe/London';
const at = (text: string, now: string) => new Date(performedMsOf(text, ZONE, Date.parse(now))).toISOString();

describe('when a calibration was performed', () => {
  it('is the instant that was given', () => {
    expect(at('2026-07-15T08:15:00Z', '2026-07-15T09:00:00Z')).toBe('2026-07-15T08:15:00.000Z');
  });

  it('is noon in the lab of the day that was given, once noon is over', () => {
    expect(at('2026-07-14', '2026-07-15T09:00:00Z')).toBe('2026-07-14T11:00:00.000Z');
    expect(at('2026-07-15', '2026-07-15T11:00:00Z')).toBe('2026-07-15T11:00:00.000Z');
    expect(at('2026-07-15', '2026-07-15T15:00:00Z')).toBe('2026-07-15T11:00:00.000Z');
  });

  it('is now in the morning of that day, from its first minute in the lab on', () => {
    expect(at('2026-07-15', '2026-07-15T10:59:00Z')).toBe('2026-07-15T10:59:00.000Z');
    expect(at('2026-07-15', '2026-07-14T23:00:00Z')).toBe('2026-07-14T23:00:00.000Z');
  });

  it('stays ahead for a day that has not begun in the lab', () => {
    expect(at('2026-07-15', '2026-07-14T22:59:00Z')).toBe('2026-07-15T11:00:00.000Z');
  });
});
