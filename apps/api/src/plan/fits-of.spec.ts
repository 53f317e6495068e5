import { calendarOf } from '#libs/calendar/src/index.js';
import type { TrialEdit } from '#libs/contract/src/index.js';
import type { PlanAround, PlanNotes } from '#libs/records/src/index.js';
import { extraShiftsOf, fitsOf } from './fits-of.js';
import type { FrameWindow } from './fits-of.js';

const WEEKDAYS = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, from: '06:00', to: '14:00', name: 'early' }));
const CHRISTMAS = '2098-12-25';

/** Thu 18 Dec 2098 is a working day; London is on UTC in December. */
const at = (text: string) => `2098-12-${text}:00Z`;

function reasonsAt(startsAt: string | undefined, windows: FrameWindow[] = [], shifts = WEEKDAYS): string[] {
  const frames = [{ id: 'frame', tag: 'FR-100K' }] as PlanAround['frames'];
  const unplaced = [{ jobId: 'job', reasons: [], fits: { frame: [] } }];
  const notes = { unplaced } as unknown as PlanNotes;
  const calendar = calendarOf({ timeZone: 'Europe/London', shifts }, [CHRISTMAS]);
  const around = { frames, jobs: new Map(), windows };
  return fitsOf('job', { bookings: [], notes, around, calendar, startsAt, nowMs: Date.now() }).flatMap(
    ({ reasons }) => reasons,
  );
}

function windowOf(kind: FrameWindow['kind'], from: string, to: string, itemId = 'frame'): FrameWindow {
  return { itemId, kind, startsAt: new Date(from), endsAt: new Date(to), why: '' };
}

describe('where a job in the hand can start', () => {
  it('takes a start in the hours of the lab, its first minute included', () => {
    expect(reasonsAt(at('18T06:00'))).toEqual([]);
    expect(reasonsAt(at('18T13:59'))).toEqual([]);
  });

  it('refuses a start after the last shift and says when the frame opens', () => {
    expect(reasonsAt(at('18T14:00'))).toEqual(['FR-100K is closed then; it opens Fri 19 Dec, 06:00.']);
  });

  it('looks past the weekend and past a closed day', () => {
    expect(reasonsAt(at('19T20:00'))).toEqual(['FR-100K is closed then; it opens Mon 22 Dec, 06:00.']);
    expect(reasonsAt(at('25T08:00'))).toEqual(['FR-100K is closed then; it opens Fri 26 Dec, 06:00.']);
  });

  it('takes a start in an extra shift of that frame, and of no other', () => {
    const saturday = [at('20T08:00'), at('20T12:00')] as const;
    expect(reasonsAt(at('20T08:00'), [windowOf('extra-shift', ...saturday)])).toEqual([]);
    expect(reasonsAt(at('20T07:00'), [windowOf('extra-shift', ...saturday)])).toEqual([
      'FR-100K is closed then; it opens Sat 20 Dec, 08:00.',
    ]);
    expect(reasonsAt(at('20T08:00'), [windowOf('extra-shift', ...saturday, 'another')])).toHaveLength(1);
  });

  it('counts an extra shift that a trial plan tries', () => {
    const span = { startsAt: at('20T08:00'), endsAt: at('20T12:00') };
    const edits: TrialEdit[] = [
      { kind: 'hold', jobId: 'job', why: '' },
      { kind: 'extra-shift', frameId: 'frame', personId: 'someone', ...span },
    ];
    expect(reasonsAt(at('20T11:00'), extraShiftsOf({ edits }))).toEqual([]);
  });

  it('says until when a frame is down, on the clock of the lab', () => {
    expect(reasonsAt(at('18T08:00'), [windowOf('down', at('18T07:00'), at('18T12:00'))])).toEqual([
      'FR-100K is down until Thu 18 Dec, 12:00.',
    ]);
  });

  it('says so when no shift is known at all', () => {
    expect(reasonsAt(at('18T08:00'), [], [])).toEqual([
      'FR-100K is closed then; no shift there is known for the next 60 days.',
    ]);
  });

  it('asks about the frame alone while no start is named', () => {
    expect(reasonsAt(undefined)).toEqual([]);
  });
});
