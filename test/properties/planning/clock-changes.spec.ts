import { MS_PER_MINUTE, minuteWindows, openWindows } from '#libs/calendar/src/index.js';
import type { WorkCalendar } from '#libs/calendar/src/index.js';
import { DEFAULT_OBJECTIVE, judgePlan, makePlan } from '#libs/planning/src/index.js';
import { NO_CHANGEOVER } from '#test/support/no-changeover.js';
import type { Problem } from '#libs/planning/src/index.js';

// The lab keeps British time: on Sunday 29 March 2026 the clock goes from 01:00 to 02:00, on 25 October from 02:00 to 01:00.
const calendar: WorkCalendar = {
  zone: 'Europe/London',
  shifts: [{ name: 'night', weekday: 6, from: '22:00', to: '06:00' }],
  exceptions: [],
};

/** One frame that is open for the one night shift from Saturday to Sunday, and one job that fills it minute by minute. */
function oneNight(fromUtc: string, minutes: number): Problem {
  const originMs = Date.parse(fromUtc);
  const open = minuteWindows(openWindows(calendar, originMs, originMs + 2 * 24 * 60 * MS_PER_MINUTE), originMs);
  const rig = { items: {}, family: null, temperatureC: null };
  const candidate = {
    frameId: 'F1',
    perSpecimenMin: 1,
    specimens: minutes,
    links: [],
    family: null,
    temperatureC: null,
  };
  const free = {
    after: [],
    attended: 'throughout' as const,
    authorisation: null,
    hold: false,
    pin: null,
    running: null,
  };
  return {
    horizonMin: 2 * 24 * 60,
    frames: [{ id: 'F1', open, warmUpMin: 0, warmUpAfterMin: 0, rig }],
    items: [],
    technicians: null,
    jobs: [{ id: 'J1', releaseMin: 0, dueMin: 0, weight: 1, candidates: [candidate], ...free }],
    visits: [],
    changeover: NO_CHANGEOVER,
    objective: DEFAULT_OBJECTIVE,
    published: null,
    freezeUntilMin: 0,
  };
}

describe('a night shift across a change of the clock', () => {
  it.each([
    ['spring, when it is an hour shorter', '2026-03-28T12:00:00Z', 7 * 60],
    ['autumn, when it is an hour longer', '2026-10-24T12:00:00Z', 9 * 60],
    ['any other week', '2026-06-13T12:00:00Z', 8 * 60],
  ])('holds exactly the minutes that pass in %s', (_, fromUtc, minutes) => {
    const full = oneNight(fromUtc, minutes);
    const plan = makePlan(full, { iterations: 1 });
    expect(judgePlan(full, plan)).toEqual([]);
    expect(plan.bookings[0]!.endMin - plan.bookings[0]!.startMin).toBe(minutes);
    const tooFull = oneNight(fromUtc, minutes + 1);
    expect(makePlan(tooFull, { iterations: 1 }).unplaced).toEqual([
      { id: 'J1', kind: 'job', reason: 'no-room-in-horizon' },
    ]);
  });
});
