import { instantOfMinute, minuteAtOrAfter, minuteAtOrBefore, minuteWindows } from './index.js';

const ORIGIN_MS = Date.parse('2025-06-02T04:00Z');
const at = (minutes: number) => ORIGIN_MS + minutes * 60_000;

describe('the minute grid', () => {
  it('rounds an instant within a minute up or down, and leaves a whole minute alone', () => {
    expect([minuteAtOrAfter(ORIGIN_MS, at(7.25)), minuteAtOrBefore(ORIGIN_MS, at(7.25))]).toEqual([8, 7]);
    expect([minuteAtOrAfter(ORIGIN_MS, at(7)), minuteAtOrBefore(ORIGIN_MS, at(7))]).toEqual([7, 7]);
    expect([minuteAtOrAfter(ORIGIN_MS, at(-0.5)), minuteAtOrBefore(ORIGIN_MS, at(-0.5))]).toEqual([0, -1]);
  });

  it('comes back from a minute to its instant', () => {
    expect(instantOfMinute(ORIGIN_MS, 90)).toBe(Date.parse('2025-06-02T05:30Z'));
  });

  it('opens only minutes that are open throughout', () => {
    const open = [
      { startMs: at(0.5), endMs: at(3.5) },
      { startMs: at(4.2), endMs: at(5.9) },
      { startMs: at(6), endMs: at(9) },
    ];
    expect(minuteWindows(open, ORIGIN_MS)).toEqual([
      { startMin: 1, endMin: 3 },
      { startMin: 6, endMin: 9 },
    ]);
  });
});
