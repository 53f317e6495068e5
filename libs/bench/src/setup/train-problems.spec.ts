import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { trainProblems } from './train-problems.js';
import type { TimedItem } from './train-problems.js';

const at = (clock: string) => Date.parse(`2026-03-02T${clock}:00Z`);
/** A run from 10:00 to 12:00. */
const RUN = Object.freeze({ startMs: at('10:00'), endMs: at('12:00') });
const cell = (over: Partial<TimedItem> = {}): TimedItem => ({
  ...{ id: 'cell', tag: 'LC-1', needsCalibration: true, heldWindows: [] },
  calibrations: [{ validFromMs: RUN.startMs - MS_PER_HOUR, dueMs: RUN.endMs }],
  ...over,
});
const rulesOf = (item: TimedItem) => trainProblems([], [item], RUN).map(({ rule }) => rule);

describe('a calibration', () => {
  it('may lapse when the run is over, and not a moment before', () => {
    expect(rulesOf(cell())).toEqual([]);
    const short = cell({ calibrations: [{ validFromMs: 0, dueMs: RUN.endMs - 1 }] });
    expect(rulesOf(short)).toEqual(['calibration-in-force']);
  });

  it('says in how many hours it lapses, and how many are needed', () => {
    const short = cell({ calibrations: [{ validFromMs: 0, dueMs: at('11:30') }] });
    expect(trainProblems([], [short], RUN)[0]).toMatchObject({
      items: ['cell'],
      sentence: expect.stringMatching(/^The calibration of LC-1 lapses in 1\.5 h; the run takes 2 h\./),
    });
  });

  it('may be followed by the next one that is in force already', () => {
    const both = [
      { validFromMs: 0, dueMs: at('11:00') },
      { validFromMs: at('09:00'), dueMs: at('20:00') },
    ];
    expect(rulesOf(cell({ calibrations: both }))).toEqual([]);
  });

  it('is no matter for an item that needs none', () => {
    expect(rulesOf(cell({ needsCalibration: false, calibrations: [] }))).toEqual([]);
  });
});

describe('an item that is promised elsewhere', () => {
  it.each([
    ['09:00', '10:00', false],
    ['09:00', '10:01', true],
    ['11:59', '13:00', true],
    ['12:00', '13:00', false],
  ])('from %s to %s is in the way: %p', (from, to, isInTheWay) => {
    const held = cell({ heldWindows: [{ startMs: at(from), endMs: at(to) }] });
    expect(rulesOf(held)).toEqual(isInTheWay ? ['frame-state'] : []);
  });
});

it('a rule that fails is told once, and a caution is none', () => {
  const verdict = { rule: 'cell-capacity', items: ['cell'], sentence: 'LC-1 is too small.' };
  const verdicts = [
    { ...verdict, outcome: 'fail' },
    { ...verdict, outcome: 'fail' },
    { ...verdict, outcome: 'caution', sentence: 'Take care.' },
    { ...verdict, outcome: 'pass', sentence: '' },
  ];
  expect(trainProblems(verdicts, [], RUN)).toEqual([verdict]);
});
