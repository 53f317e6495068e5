import { localDay, localTimeAt } from '#test/support/calendar.js';
import { MS_PER_HOUR } from './time-window.js';
import { addDays, addMonths, instantAt, isDate, isZone, localDateAt, weekdayOf } from './index.js';

const BERLIN = 'Europe/Berlin';
const utc = (text: string) => Date.parse(text);

describe('instantAt', () => {
  it('reads the wall clock in winter (UTC+1) and in summer (UTC+2)', () => {
    expect(instantAt('2025-01-15', '06:00', BERLIN)).toBe(utc('2025-01-15T05:00Z'));
    expect(instantAt('2025-07-15', '06:00', BERLIN)).toBe(utc('2025-07-15T04:00Z'));
  });

  // Berlin, 30 March 2025: 02:00 becomes 03:00 at 01:00 UTC.
  it.each(['02:00', '02:15', '02:59', '03:00'])(
    'takes %s on the morning of the spring change as the change itself',
    (time) => {
      expect(instantAt('2025-03-30', time, BERLIN)).toBe(utc('2025-03-30T01:00Z'));
    },
  );

  // Berlin, 26 October 2025: 03:00 becomes 02:00 at 01:00 UTC, so that 02:30 comes at 00:30 and at 01:30 UTC.
  it('takes a time that the autumn change repeats at its first pass', () => {
    expect(instantAt('2025-10-26', '02:30', BERLIN)).toBe(utc('2025-10-26T00:30Z'));
    expect(instantAt('2025-10-26', '03:00', BERLIN)).toBe(utc('2025-10-26T02:00Z'));
  });

  it('knows a change of half an hour (Lord Howe, 5 October 2025, 02:00 becomes 02:30)', () => {
    expect(instantAt('2025-10-05', '02:10', 'Australia/Lord_Howe')).toBe(utc('2025-10-04T15:30Z'));
  });

  it('ends a day at 24:00, at the month and at the year', () => {
    expect(instantAt('2025-12-31', '24:00', 'UTC')).toBe(utc('2026-01-01T00:00Z'));
  });

  it('refuses what does not exist', () => {
    expect(() => instantAt('2025-02-29', '06:00', BERLIN)).toThrow(RangeError);
    expect(() => instantAt('2025-02-28', '25:00', BERLIN)).toThrow(RangeError);
    expect(() => instantAt('2025-02-28', '06:00', 'Europe/Nowhere')).toThrow(RangeError);
  });
});

describe('the day on the wall', () => {
  it('changes at midnight in the zone, not in UTC', () => {
    expect(localDateAt(utc('2025-06-30T21:59:59Z'), BERLIN)).toBe('2025-06-30');
    expect(localDateAt(utc('2025-06-30T22:00Z'), BERLIN)).toBe('2025-07-01');
    expect(localTimeAt(utc('2025-06-30T22:00Z'), BERLIN)).toBe('00:00');
  });

  it.each([
    ['2025-03-30', 23],
    ['2025-10-26', 25],
    ['2025-05-05', 24],
  ])('%s lasts %p hours', (date, hours) => {
    const { startMs, endMs } = localDay(date, BERLIN);
    expect((endMs - startMs) / MS_PER_HOUR).toBe(hours);
  });

  it('starts at 01:00 where midnight itself is skipped (Cairo, 25 April 2025)', () => {
    const { startMs } = localDay('2025-04-25', 'Africa/Cairo');
    expect(localTimeAt(startMs, 'Africa/Cairo')).toBe('01:00');
  });
});

describe('moving along the calendar', () => {
  it('adds days over the end of February', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2025-03-01', -1)).toBe('2025-02-28');
  });

  it('adds months at the same time on the wall, and ends in a shorter month on its last day', () => {
    const at = addMonths(utc('2025-01-31T11:00Z'), 1, BERLIN);
    expect([localDateAt(at, BERLIN), localTimeAt(at, BERLIN)]).toEqual(['2025-02-28', '12:00']);
    const summer = addMonths(utc('2025-01-15T11:00Z'), 6, BERLIN);
    expect(localTimeAt(summer, BERLIN)).toBe('12:00');
  });

  it('counts Monday as 1 and Sunday as 7', () => {
    expect(weekdayOf('2025-12-29')).toBe(1);
    expect(weekdayOf('2025-12-28')).toBe(7);
  });
});

describe('checking texts', () => {
  it('knows zones and dates', () => {
    expect([isZone(BERLIN), isZone('UTC'), isZone('Nowhere'), isZone('')]).toEqual([true, true, false, false]);
    expect([
      isDate('2024-02-29'),
      isDate('2025-02-29'),
      isDate('2025-2-1'),
      isDate('tomorrow'),
      isDate('2025-02-01T06:00'),
    ]).toEqual([true, false, false, false, false]);
  });
});
