import type { TimeWindow } from './time-window.js';

/**
 * Sets of instants as lists of half-open windows. Every function takes its windows in any order, overlapping, touching or
 * empty, and gives them back in normal form: sorted, not empty, and with a gap between any two.
 */

/** All instants that lie in any of the lists. */
export function unionWindows(...lists: (readonly TimeWindow[])[]): TimeWindow[] {
  const [only] = lists;
  if (lists.length === 1 && isNormal(only!)) return only!.map(copied);
  const joined: TimeWindow[] = [];
  for (const next of lists
    .flat()
    .filter(notEmpty)
    .sort((a, b) => a.startMs - b.startMs)) {
    const last = joined.at(-1);
    if (last && next.startMs <= last.endMs) last.endMs = Math.max(last.endMs, next.endMs);
    else joined.push({ startMs: next.startMs, endMs: next.endMs });
  }
  return joined;
}

/** All instants that lie in both lists. */
export function intersectWindows(a: readonly TimeWindow[], b: readonly TimeWindow[]): TimeWindow[] {
  const left = isNormal(a) ? a : unionWindows(a);
  const right = isNormal(b) ? b : unionWindows(b);
  const common: TimeWindow[] = [];
  for (let i = 0, j = 0; i < left.length && j < right.length;) {
    const startMs = Math.max(left[i]!.startMs, right[j]!.startMs);
    const endMs = Math.min(left[i]!.endMs, right[j]!.endMs);
    if (startMs < endMs) common.push({ startMs, endMs });
    if (left[i]!.endMs < right[j]!.endMs) i += 1;
    else j += 1;
  }
  return common;
}

/** All instants of the first list that do not lie in the second. */
export function subtractWindows(from: readonly TimeWindow[], taken: readonly TimeWindow[]): TimeWindow[] {
  return intersectWindows(from, gapsOf(isNormal(taken) ? taken : unionWindows(taken)));
}

/** All instants of the list that lie in [startMs, endMs). */
export function clipWindows(windows: readonly TimeWindow[], startMs: number, endMs: number): TimeWindow[] {
  return intersectWindows(windows, [{ startMs, endMs }]);
}

/** How long the windows are together, ms; an instant that lies in two windows counts once. */
export function totalMs(windows: readonly TimeWindow[]): number {
  return unionWindows(windows).reduce((sum, { startMs, endMs }) => sum + (endMs - startMs), 0);
}

/** Whether the whole of [startMs, endMs) is covered; an empty span is covered by anything. */
export function covers(windows: readonly TimeWindow[], span: TimeWindow): boolean {
  return subtractWindows([span], windows).length === 0;
}

/** Whether windows are in normal form already, as those are that come from here. */
function isNormal(windows: readonly TimeWindow[]): boolean {
  let beforeMs = -Infinity;
  for (const { startMs, endMs } of windows) {
    if (!(startMs < endMs) || (beforeMs !== -Infinity && startMs <= beforeMs)) return false;
    beforeMs = endMs;
  }
  return true;
}

function gapsOf(sorted: readonly TimeWindow[]): TimeWindow[] {
  const starts = [-Infinity, ...sorted.map(({ endMs }) => endMs)];
  const ends = [...sorted.map(({ startMs }) => startMs), Infinity];
  return starts.map((startMs, index) => ({ startMs, endMs: ends[index]! }));
}

function copied({ startMs, endMs }: TimeWindow): TimeWindow {
  return { startMs, endMs };
}

function notEmpty({ startMs, endMs }: TimeWindow): boolean {
  return startMs < endMs;
}
