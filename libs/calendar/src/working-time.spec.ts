import { addWorkingMinutes, nextOpenAt } from './index.js';
import type { TimeWindow } from './index.js';

const MIN = 60_000;
/** Open for 30 minutes from minute 10, and for 60 minutes from minute 100. */
const OPEN: readonly TimeWindow[] = Object.freeze([
  { startMs: 100 * MIN, endMs: 160 * MIN },
  { startMs: 10 * MIN, endMs: 40 * MIN },
]);

describe('addWorkingMinutes', () => {
  it.each([
    [0, 30, 40], // fills the first window to its end
    [0, 31, 101], // one minute more goes on in the next
    [20, 40, 120],
    [50, 60, 160],
    [70, 0, 70], // no work is done at once
  ])('from minute %p, %p minutes of work end at minute %p', (from, minutes, end) => {
    expect(addWorkingMinutes(OPEN, from * MIN, minutes)).toBe(end * MIN);
  });

  it('is null when the windows do not hold that much', () => {
    expect(addWorkingMinutes(OPEN, 0, 90)).toBe(160 * MIN);
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
    expect(nextOpenAt(OPEN, from * MIN)).toBe(next * MIN);
  });

  it('is null after the last window', () => {
    expect(nextOpenAt(OPEN, 160 * MIN)).toBeNull();
  });
});
