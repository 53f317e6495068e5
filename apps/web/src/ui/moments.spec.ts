import { momentsIn, span } from './moments.js';

// Clock changes in Europe/London, 2026: 29 March 01:00 UTC forward, 25 October 01:00 UTC back (common practice, IANA time zone database).
const { fromLocalInput, instantOf, moment, partsOf, startOfDay, toLocalInput } = momentsIn('Europe/London');

describe('moments by the clock of the lab', () => {
  it('are read as the clock shows them, in winter and in summer', () => {
    expect(fromLocalInput('2026-01-15T09:30')).toBe('2026-01-15T09:30:00.000Z');
    expect(fromLocalInput('2026-07-15T09:30')).toBe('2026-07-15T08:30:00.000Z');
  });

  it('come back unchanged from the input that they were put in', () => {
    for (const instant of ['2026-03-28T23:15:00.000Z', '2026-03-29T10:00:00.000Z', '2026-10-25T12:45:00.000Z']) {
      expect(fromLocalInput(toLocalInput(instant))).toBe(instant);
    }
  });

  it('take a day without a time at the hour that is meant', () => {
    expect(fromLocalInput('2026-07-15', 17)).toBe('2026-07-15T16:00:00.000Z');
    expect(fromLocalInput('', 17)).toBeNull();
  });

  it('begin a day at its midnight, also when the day has 23 or 25 hours', () => {
    const hours = (from: string, plus: number) =>
      (startOfDay(Date.parse(from), plus) - startOfDay(Date.parse(from))) / 3_600_000;
    expect(hours('2026-03-29T12:00:00Z', 1)).toBe(23);
    expect(hours('2026-10-25T12:00:00Z', 1)).toBe(25);
    expect(hours('2026-06-01T12:00:00Z', 1)).toBe(24);
  });

  it('take an hour that the clock skips as the one after it', () => {
    const skipped = instantOf({ year: 2026, month: 3, day: 29, hour: 1, minute: 30 });
    expect(partsOf(skipped).hour).toBe(2);
  });

  it('are shown with weekday and, in another year, with the year', () => {
    expect(moment(null)).toBe('–');
    expect(moment('2019-05-02T11:05:00Z')).toBe('Thu 2 May 2019 12:05');
  });

  it('take what year it is, and what time, from the lab when its clock is ahead of this device', () => {
    const aheadMs = Date.parse('2040-02-29T12:00:00Z') - Date.now();
    const { day, nowMs } = momentsIn('Europe/London', aheadMs);
    expect([day(nowMs()), day('2040-12-31T23:30:00Z'), day('2041-01-01T00:30:00Z')]).toEqual([
      ...['Wed 29 Feb', 'Mon 31 Dec', 'Tue 1 Jan 2041'],
    ]);
  });

  it('last minutes, hours or days, as people say it', () => {
    expect([span(25), span(90), span(600), span(4320)]).toEqual(['25 min', '1.5 h', '10 h', '3 days']);
  });
});
