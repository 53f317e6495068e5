import { MS_PER_MINUTE } from './time-window.js';
import { addWorkingMinutes, nextOpenAt } from './index.js';
import type { TimeWindow } from './index.js';

/** Open for 30 minutes from minute 10, and for 60 minutes from minute 100. */
const OPEN: readonly TimeWindow[] = Object.freeze([
  { startMs: 100 * MS_PER_MINUTE, endMs: 160 * MS_PER_MINUTE },
  { startMs: 10 * MS_PER_MINUTE, endMs: 40 * MS_PER_MINUTE },
]);

describe('addWorkingMinutes', () => {
  it.each([
    [0, 30, 40], // fills the first window to its end
    [0, 31, 101], // one minute more goes on in the next
    [20, 40, 120],
    [50, 60, 160],
    [70, 0, 70], // no work is done at once
  ])('from minute %p, %p minutes of work end at minute %p', (from, minutes, end) => {
    expect(addWorkingMinutes(OPEN, from * MS_PER_MINUTE, minutes)).toBe(end * MS_PER_MINUTE);
  });

  it('is null when the windows do not hold that much', () => {
    expect(addWorkingMinutes(OPEN, 0, 90)).toBe(160 * MS_PER_MINUTE);
    expect(addWorkingMinutes(OPEN, 0, 91)).toBeNull();
  });

  it.each([-1, NaN, Infinity])('refuses %p minutes', (minutes) => {
    expect(() => addWorkingMinutes(OPEN, 0, minutes)).toThrow(RangeError);
  });
});

describe('nextOpenAt', () => {
  it.each([
    [0, 10],
    [39, 39],
    [40, 100],
  ])('after minute %p is open at minute %p', (from, next) => {
    expect(nextOpenAt(OPEN, from * MS_PER_MINUTE)).toBe(next * MS_PER_MINUTE);
  });

  it('is null after the last window', () => {
    expect(nextOpenAt(OPEN, 160 * MS_PER_MINUTE)).toBeNull();
  });
});
