import type { SignalDoubt } from './signal-doubt.js';

/** A spike stands out by at least this share of the whole range, and … (common practice, no source). */
const LEAST_SHARE = 0.03;
/** … by so many times what its neighbours differ from each other (common practice, no source). */
const TIMES_NEIGHBOURS = 5;
/** Spikes are rare. More of them are the signal itself: a trace that sticks and slips (common practice, no source). */
const MOST_SPIKES = 5;
/** With fewer rows nobody can tell a disturbance from the test. */
const FEWEST_ROWS = 20;
/** A disturbance of the signal is over after so many rows. */
const WIDEST = 2;

/**
 * Takes out rows whose load stands far off the line between the rows beside them, while those agree with each other: a
 * disturbance of the cable, not the specimen. Such rows get the value of that line, and each is named.
 */
export function withoutSpikes(y: Float64Array, unit: string): { y: Float64Array; doubts: SignalDoubt[] } {
  const doubts = y.length < FEWEST_ROWS ? [] : findSpikes(y, unit);
  if (doubts.length === 0 || doubts.length > MOST_SPIKES) return { y, doubts: [] };
  const mended = Float64Array.from(y);
  for (const { fromRow, toRow } of doubts)
    for (let at = fromRow; at <= toRow; at++) mended[at] = between(y, fromRow - 1, toRow + 1, at);
  return { y: mended, doubts };
}

function findSpikes(y: Float64Array, unit: string): SignalDoubt[] {
  const least = LEAST_SHARE * rangeOf(y);
  const doubts: SignalDoubt[] = [];
  for (let at = 1; at < y.length - 1; at++) {
    if (Math.abs(y[at]! - y[at - 1]!) < least) continue;
    const width = widthOf(y, at, least);
    if (width === 0) continue;
    doubts.push({
      code: 'spike-left-out',
      fromRow: at,
      toRow: at + width - 1,
      found: y[at]!,
      allowed: y[at - 1]!,
      unit,
    });
    if (doubts.length > MOST_SPIKES) return doubts;
    at += width;
  }
  return doubts;
}

/** How many rows from `at` on stand off the line between the rows beside them; 0 where none does. */
function widthOf(y: Float64Array, at: number, least: number): number {
  for (let width = 1; width <= WIDEST && at + width < y.length; width++) {
    const [before, after] = [y[at - 1]!, y[at + width]!];
    const limit = Math.max(least, TIMES_NEIGHBOURS * Math.abs(after - before));
    let off = true;
    for (let row = at; row < at + width; row++)
      off &&=
        Math.abs(y[row]! - between(y, at - 1, at + width, row)) > limit &&
        Math.sign(y[row]! - before) === Math.sign(y[at]! - before);
    if (off) return standsAlone(y, at, width) ? width : 0;
  }
  return 0;
}

/** Beside a disturbance the load goes on in its usual steps; beside the peak of a record with few rows the steps are as large as it. */
function standsAlone(y: Float64Array, at: number, width: number): boolean {
  const height = Math.abs(y[at]! - between(y, at - 1, at + width, at));
  const stepBefore = at >= 2 ? Math.abs(y[at - 1]! - y[at - 2]!) : 0;
  const stepAfter = at + width + 1 < y.length ? Math.abs(y[at + width + 1]! - y[at + width]!) : 0;
  return height > TIMES_NEIGHBOURS * Math.max(stepBefore, stepAfter);
}

function between(y: Float64Array, from: number, to: number, at: number): number {
  return y[from]! + ((y[to]! - y[from]!) * (at - from)) / (to - from);
}

function rangeOf(y: Float64Array): number {
  let [least, most] = [Infinity, -Infinity];
  for (const value of y) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return most - least;
}
