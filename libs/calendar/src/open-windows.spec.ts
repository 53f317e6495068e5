import { localDay } from '#test/support/calendar.js';
import type { InvalidInput } from '#libs/errors/src/index.js';
import { MS_PER_HOUR } from './time-window.js';
import { calendarOf, openWindows, shiftAt, shiftsBetween, totalMs } from './index.js';
import type { Shift, WorkCalendar } from './index.js';

const utc = (text: string) => Date.parse(text);

const weekdays = (from: string, to: string, name: string): Shift[] =>
  [1, 2, 3, 4, 5].map((weekday) => ({ weekday, from, to, name }));

/** Two shifts on weekdays that meet at 14:00. */
const TWO_SHIFTS: WorkCalendar = Object.freeze({
  zone: 'Europe/Berlin',
  shifts: [...weekdays('06:00', '14:00', 'early'), ...weekdays('14:00', '22:00', 'late')],
  exceptions: [
    { date: '2025-12-25', shifts: [], reason: 'Christmas Day' },
    { date: '2025-12-24', shifts: [{ from: '06:00', to: '12:00', name: 'short' }], reason: 'Christmas Eve' },
  ],
});

const NIGHTS: WorkCalendar = {
  zone: 'Europe/Berlin',
  shifts: [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ weekday, from: '22:00', to: '06:00', name: 'night' })),
  exceptions: [],
};

const AROUND_THE_CLOCK: WorkCalendar = {
  zone: 'Europe/Berlin',
  shifts: [1, 2, 3, 4, 5, 6, 7].flatMap((weekday) => [
    { weekday, from: '00:00', to: '02:30', name: 'first' },
    { weekday, from: '02:30', to: '24:00', name: 'second' },
  ]),
  exceptions: [],
};

describe('openWindows', () => {
  it('joins shifts that meet, and opens in the lab zone', () => {
    // Monday 2 June 2025, Berlin is UTC+2.
    expect(openWindows(TWO_SHIFTS, utc('2025-06-02T00:00Z'), utc('2025-06-03T00:00Z'))).toEqual([
      { startMs: utc('2025-06-02T04:00Z'), endMs: utc('2025-06-02T20:00Z') },
    ]);
  });

  it('stays closed over the weekend', () => {
    expect(openWindows(TWO_SHIFTS, utc('2025-06-06T20:00Z'), utc('2025-06-09T04:00Z'))).toEqual([]);
  });

  it('is cut at both ends of the span asked for', () => {
    const [window] = openWindows(TWO_SHIFTS, utc('2025-06-02T09:30Z'), utc('2025-06-02T10:00Z'));
    expect(window).toEqual({ startMs: utc('2025-06-02T09:30Z'), endMs: utc('2025-06-02T10:00Z') });
  });

  it('keeps a holiday closed and an exceptional day to its own hours', () => {
    const days = ['2025-12-23', '2025-12-24', '2025-12-25'].map((date) => localDay(date, 'Europe/Berlin'));
    const hours = days.map(({ startMs, endMs }) => totalMs(openWindows(TWO_SHIFTS, startMs, endMs)) / MS_PER_HOUR);
    expect(hours).toEqual([16, 6, 0]);
  });

  it('lets a night shift of the eve run into the span', () => {
    const [window] = openWindows(NIGHTS, utc('2025-06-03T00:00Z'), utc('2025-06-03T12:00Z'));
    expect(window).toEqual({ startMs: utc('2025-06-03T00:00Z'), endMs: utc('2025-06-03T04:00Z') });
  });

  it.each([
    ['2025-03-29T12:00Z', 7], // the night to 30 March loses an hour
    ['2025-10-25T12:00Z', 9], // the night to 26 October gains one
    ['2025-06-03T12:00Z', 8],
  ])('the night after %s works %p hours', (noon, hours) => {
    const from = utc(noon);
    expect(totalMs(openWindows(NIGHTS, from, from + 24 * MS_PER_HOUR)) / MS_PER_HOUR).toBe(hours);
  });

  it.each(['2025-03-30', '2025-10-26', '2025-05-05'])(
    'shifts that meet at 02:30 leave no gap and no overlap on %s',
    (date) => {
      const { startMs, endMs } = localDay(date, 'Europe/Berlin');
      const lengths = shiftsBetween(AROUND_THE_CLOCK, startMs, endMs).map((shift) => shift.endMs - shift.startMs);
      expect(openWindows(AROUND_THE_CLOCK, startMs, endMs)).toEqual([{ startMs, endMs }]);
      expect(lengths.reduce((sum, length) => sum + length, 0)).toBe(endMs - startMs);
    },
  );

  it('drops a shift that lies wholly in the skipped hour', () => {
    const skipped: WorkCalendar = {
      zone: 'Europe/Berlin',
      shifts: [{ weekday: 7, from: '02:00', to: '03:00' }],
      exceptions: [],
    };
    const { startMs, endMs } = localDay('2025-03-30', 'Europe/Berlin');
    expect(openWindows(skipped, startMs, endMs)).toEqual([]);
    expect(shiftsBetween(skipped, startMs, endMs)).toEqual([]);
  });

  it('is empty over an empty span, and refuses one of more than 20 years', () => {
    expect(openWindows(TWO_SHIFTS, 5, 5)).toEqual([]);
    expect(() => openWindows(TWO_SHIFTS, 0, utc('2025-01-01'))).toThrow(RangeError);
  });

  it('names everything that is wrong with a calendar', () => {
    const bad: WorkCalendar = {
      zone: 'Europe/Nowhere',
      shifts: [{ weekday: 8, from: '6:00', to: '24:01' }],
      exceptions: [{ date: '2025-02-30', shifts: [{ from: '24:00', to: '06:00' }], reason: '' }],
    };
    const fields = (() => {
      try {
        openWindows(bad, 0, 1);
      } catch (error) {
        return (error as InvalidInput).problems.map(({ field }) => field);
      }
      return [];
    })();
    expect(fields).toEqual([
      'zone',
      'shifts[0].weekday',
      'shifts[0].from',
      'shifts[0].to',
      'exceptions[0].date',
      'exceptions[0].shifts[0].from',
    ]);
  });
});

describe('shiftsBetween', () => {
  it('keeps shifts apart that meet or overlap, by start and then by end', () => {
    const shifts = [
      { weekday: 1, from: '12:00', to: '20:00', name: 'late' },
      { weekday: 1, from: '06:00', to: '14:00', name: 'early' },
      { weekday: 1, from: '06:00', to: '10:00', name: 'half' },
    ];
    const { startMs, endMs } = localDay('2025-06-02', 'Europe/Berlin');
    const names = shiftsBetween({ ...TWO_SHIFTS, shifts }, startMs, endMs).map(({ name }) => name);
    expect(names).toEqual(['half', 'early', 'late']);
  });
});

describe('shiftAt', () => {
  it('belongs to the shift that begins where two meet', () => {
    expect(shiftAt(TWO_SHIFTS, utc('2025-06-02T11:59:59.999Z'))?.name).toBe('early');
    expect(shiftAt(TWO_SHIFTS, utc('2025-06-02T12:00Z'))?.name).toBe('late');
  });

  it('belongs to the day on which a night shift began', () => {
    expect(shiftAt(NIGHTS, utc('2025-06-03T02:00Z'))).toMatchObject({ date: '2025-06-02', name: 'night' });
  });

  it('is null while nobody works', () => {
    expect(shiftAt(TWO_SHIFTS, utc('2025-06-02T20:00Z'))).toBeNull();
  });
});

describe('the calendar of a week with closed days', () => {
  it('is shut on a closed day and open on the days around it', () => {
    const calendar = calendarOf({ timeZone: 'Europe/Berlin', shifts: TWO_SHIFTS.shifts }, ['2025-11-26']);
    const open = openWindows(calendar, utc('2025-11-25T00:00+01:00'), utc('2025-11-28T00:00+01:00'));
    expect(open.map(({ startMs }) => new Date(startMs).toISOString())).toEqual([
      '2025-11-25T05:00:00.000Z',
      '2025-11-27T05:00:00.000Z',
    ]);
  });
});
