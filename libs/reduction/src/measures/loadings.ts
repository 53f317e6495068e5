import type { PreparedAxes } from './prepare-axes.js';
import type { ReductionRefusal } from './reduction-outcome.js';

/** A way back of this share of the whole travel ends a loading; less is noise (common practice, no source). */
const TURN_SHARE = 0.05;

/**
 * The rows of one loading of a record that goes to and fro: from where the travel turns up to where it turns back again. Rows
 * before it are left out; x goes on counting from the first row of the record, where the specimen was first touched.
 *
 * @param which counted from 1
 */
export function loadingOf(axes: PreparedAxes, which: number): PreparedAxes | ReductionRefusal {
  const loadings = loadingsIn(axes.x);
  const rows = loadings[which - 1];
  if (!rows) return { reason: 'loading-missing', what: `loading ${which} of ${loadings.length} in the record` };
  const cut = (values: Float64Array) => values.subarray(rows.from, rows.to + 1);
  return { ...axes, x: cut(axes.x), y: cut(axes.y), plainY: cut(axes.plainY), firstRow: rows.from };
}

/** Rows [from, to] of each loading: x rises from a valley to the next top. */
export function loadingsIn(x: Float64Array): { from: number; to: number }[] {
  const turn = TURN_SHARE * (Math.max(...extremesOf(x)) - Math.min(...extremesOf(x)));
  const found: { from: number; to: number }[] = [];
  let [valley, top, isRising] = [0, 0, true];
  for (let at = 1; at < x.length; at++) {
    if (isRising && x[at]! > x[top]!) top = at;
    else if (isRising && x[top]! - x[at]! > turn) {
      found.push({ from: valley, to: top });
      [isRising, valley] = [false, at];
    } else if (!isRising && x[at]! < x[valley]!) valley = at;
    else if (!isRising && x[at]! - x[valley]! > turn) [isRising, top] = [true, at];
  }
  return isRising && x[top]! - x[valley]! > turn ? [...found, { from: valley, to: top }] : found;
}

function extremesOf(values: Float64Array): [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return [least, most];
}
