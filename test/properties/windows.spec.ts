import fc from 'fast-check';
import {
  addWorkingMinutes,
  covers,
  instantAt,
  instantOfMinute,
  intersectWindows,
  localDateAt,
  minuteWindows,
  MS_PER_MINUTE,
  openWindows,
  subtractWindows,
  totalMs,
  unionWindows,
} from '#libs/calendar/src/index.js';
import type { TimeWindow, WorkCalendar } from '#libs/calendar/src/index.js';
import { localTimeAt, workingMinutesBetween } from '#test/support/calendar.js';

const windows = fc.array(
  fc.record({ startMs: fc.integer({ min: 0, max: 500 }), endMs: fc.integer({ min: 0, max: 500 }) }),
  { maxLength: 12 },
);

/** The plain truth: which of the 500 milliseconds lie in a window. */
function held(list: readonly TimeWindow[]): boolean[] {
  return Array.from({ length: 501 }, (_, ms) => list.some(({ startMs, endMs }) => startMs <= ms && ms < endMs));
}

function isNormal(list: readonly TimeWindow[]): boolean {
  return list.every(
    ({ startMs, endMs }, index) => startMs < endMs && (index === 0 || list[index - 1]!.endMs < startMs),
  );
}

describe('windows behave like sets of instants', () => {
  const cases: [string, (a: TimeWindow[], b: TimeWindow[]) => TimeWindow[], (a: boolean, b: boolean) => boolean][] = [
    ['union', (a, b) => unionWindows(a, b), (a, b) => a || b],
    ['intersection', intersectWindows, (a, b) => a && b],
    ['difference', subtractWindows, (a, b) => a && !b],
  ];

  it.each(cases)('%s agrees with asking every instant, in normal form', (_name, joined, truth) => {
    fc.assert(
      fc.property(windows, windows, (a, b) => {
        const result = joined(a, b);
        const [inA, inB] = [held(a), held(b)];
        expect(held(result)).toEqual(inA.map((one, ms) => truth(one, inB[ms]!)));
        return isNormal(result);
      }),
    );
  });

  it('splits every list into what another covers and what it does not', () => {
    fc.assert(
      fc.property(windows, windows, (a, b) => {
        const [inside, outside] = [intersectWindows(a, b), subtractWindows(a, b)];
        expect(unionWindows(inside, outside)).toEqual(unionWindows(a));
        return totalMs(inside) + totalMs(outside) === totalMs(a);
      }),
    );
  });

  it('covers a span exactly when nothing of it is left after subtraction', () => {
    fc.assert(
      fc.property(
        windows,
        fc.integer({ min: 0, max: 499 }),
        fc.integer({ min: 1, max: 60 }),
        (a, startMs, lengthMs) => {
          const span = { startMs, endMs: startMs + lengthMs };
          return covers(a, span) === (totalMs(intersectWindows(a, [span])) === lengthMs);
        },
      ),
    );
  });
});

describe('working time', () => {
  const open = windows.map((list) =>
    list.map(({ startMs, endMs }) => ({ startMs: startMs * MS_PER_MINUTE, endMs: endMs * MS_PER_MINUTE })),
  );

  it('of a length, added, is that length between start and end', () => {
    fc.assert(
      fc.property(open, fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 300 }), (list, from, minutes) => {
        const end = addWorkingMinutes(list, from * MS_PER_MINUTE, minutes);
        if (end === null) return workingMinutesBetween(list, from * MS_PER_MINUTE, 501 * MS_PER_MINUTE) < minutes;
        return workingMinutesBetween(list, from * MS_PER_MINUTE, end) === minutes;
      }),
    );
  });
});

/** Zones whose clocks change by an hour, by half an hour, at midnight, south of the equator, and never. */
const zone = fc.constantFrom(
  'Europe/Berlin',
  'America/New_York',
  'Australia/Lord_Howe',
  'Africa/Cairo',
  'America/Santiago',
  'Asia/Kolkata',
);
const instant = fc.integer({ min: Date.parse('2024-01-01T00:00Z'), max: Date.parse('2027-12-31T00:00Z') });
const minuteOfDay = fc.integer({ min: 0, max: 1439 });
const clock = (minute: number) =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

describe('the wall clock', () => {
  it('never runs backwards when it is read as instants', () => {
    fc.assert(
      fc.property(zone, instant, minuteOfDay, minuteOfDay, (name, ms, a, b) => {
        const date = localDateAt(ms, name);
        const [first, second] = a < b ? [a, b] : [b, a];
        return instantAt(date, clock(first), name) <= instantAt(date, clock(second), name);
      }),
      { numRuns: 500 },
    );
  });

  it('shows the time that was asked for, unless the clock skipped it', () => {
    fc.assert(
      fc.property(zone, instant, minuteOfDay, (name, ms, minute) => {
        const date = localDateAt(ms, name);
        const shown = localTimeAt(instantAt(date, clock(minute), name), name);
        return shown === clock(minute) || shown > clock(minute);
      }),
      { numRuns: 500 },
    );
  });
});

describe('open windows', () => {
  const everyDay = (from: string, to: string) => [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ weekday, from, to }));
  const HOURS_72 = 72 * 3_600_000;

  it('of shifts that fill the day lose no minute, whatever the clock does', () => {
    fc.assert(
      fc.property(zone, instant, minuteOfDay, (name, ms, minute) => {
        const at = clock(minute);
        const calendar: WorkCalendar = {
          zone: name,
          shifts: [...everyDay('00:00', at), ...everyDay(at, '24:00')],
          exceptions: [],
        };
        expect(openWindows(calendar, ms, ms + HOURS_72)).toEqual([{ startMs: ms, endMs: ms + HOURS_72 }]);
      }),
      { numRuns: 200 },
    );
  });

  it('are the same whether laid out at once or in two parts', () => {
    fc.assert(
      fc.property(
        zone,
        instant,
        fc.integer({ min: 1, max: HOURS_72 - 1 }),
        minuteOfDay,
        minuteOfDay,
        (name, ms, cut, a, b) => {
          const calendar: WorkCalendar = { zone: name, shifts: everyDay(clock(a), clock(b)), exceptions: [] };
          const parts = unionWindows(
            openWindows(calendar, ms, ms + cut),
            openWindows(calendar, ms + cut, ms + HOURS_72),
          );
          expect(parts).toEqual(openWindows(calendar, ms, ms + HOURS_72));
        },
      ),
      { numRuns: 200 },
    );
  });

  it('lie on the minute grid as they are, when the origin is a whole minute', () => {
    fc.assert(
      fc.property(zone, instant, minuteOfDay, minuteOfDay, (name, ms, a, b) => {
        const origin = Math.floor(ms / 60_000) * 60_000;
        const calendar: WorkCalendar = { zone: name, shifts: everyDay(clock(a), clock(b)), exceptions: [] };
        const open = openWindows(calendar, origin, origin + HOURS_72);
        const back = minuteWindows(open, origin).map(({ startMin, endMin }) => ({
          startMs: instantOfMinute(origin, startMin),
          endMs: instantOfMinute(origin, endMin),
        }));
        expect(back).toEqual(open);
      }),
      { numRuns: 200 },
    );
  });
});
