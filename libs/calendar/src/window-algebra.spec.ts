import { clipWindows, covers, intersectWindows, subtractWindows, totalMs, unionWindows } from './index.js';
import type { TimeWindow } from './index.js';

const w = (startMs: number, endMs: number): TimeWindow => Object.freeze({ startMs, endMs });

describe('unionWindows', () => {
  it('sorts, drops what is empty, and joins what overlaps or touches', () => {
    expect(unionWindows([w(40, 50), w(0, 10), w(20, 20)], [w(10, 15), w(45, 60), w(9, 3)])).toEqual([
      w(0, 15),
      w(40, 60),
    ]);
  });

  it('keeps a gap of one millisecond', () => {
    expect(unionWindows([w(0, 10), w(11, 20)])).toEqual([w(0, 10), w(11, 20)]);
  });

  it('leaves a window inside another one out', () => {
    expect(unionWindows([w(0, 100), w(10, 20)])).toEqual([w(0, 100)]);
  });
});

describe('intersectWindows', () => {
  it('keeps what both cover', () => {
    expect(intersectWindows([w(0, 10), w(20, 30)], [w(5, 25)])).toEqual([w(5, 10), w(20, 25)]);
  });

  it('finds nothing between windows that only touch', () => {
    expect(intersectWindows([w(0, 10)], [w(10, 20)])).toEqual([]);
  });
});

describe('subtractWindows', () => {
  it('cuts out of the middle, from both ends, and the whole', () => {
    expect(subtractWindows([w(0, 100)], [w(40, 60)])).toEqual([w(0, 40), w(60, 100)]);
    expect(subtractWindows([w(0, 100)], [w(-5, 10), w(90, 120)])).toEqual([w(10, 90)]);
    expect(subtractWindows([w(0, 100)], [w(0, 100)])).toEqual([]);
    expect(subtractWindows([w(0, 100)], [])).toEqual([w(0, 100)]);
  });
});

describe('asking about windows', () => {
  it('clips to a span', () => {
    expect(clipWindows([w(0, 10), w(20, 30)], 8, 20)).toEqual([w(8, 10)]);
  });

  it('counts an instant once', () => {
    expect(totalMs([w(0, 10), w(5, 15)])).toBe(15);
  });

  it('covers a span only without a gap', () => {
    expect(covers([w(0, 10), w(10, 20)], w(3, 20))).toBe(true);
    expect(covers([w(0, 10), w(11, 20)], w(3, 20))).toBe(false);
    expect(covers([], w(3, 3))).toBe(true);
  });
});
