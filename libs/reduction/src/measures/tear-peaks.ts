import { lacking, measured, pointAt } from './prepared-test.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';
import type { Flag } from './reduction-outcome.js';
import { traceWindow, windowEnds } from './trace.js';

/** Fewer peaks than this say little (ISO 6133 changes its way of reading below five peaks; from memory). */
const FEWEST_PEAKS = 5;

/** Mean of the peaks of a tear trace between the bounds: N/mm of thickness for rubber, N for a fabric (ISO 34-1, ISO 13937-2, ISO 6133; from memory). */
export const meanTearPeaks: Measure = (test) =>
  overPeaks(test, (heights) => heights.reduce((sum, height) => sum + height, 0) / heights.length);

/** Median of the same peaks, in the same unit (ISO 6133; from memory). */
export const medianTearPeaks: Measure = (test) => overPeaks(test, median);

function overPeaks(test: PreparedTest, figure: (heights: readonly number[]) => number): Measured[] {
  const { recipe, stressLacks, axes, y } = test;
  if (!recipe.trace) return lacking('recipe-missing', 'trace');
  if (stressLacks !== null) return lacking('dimension-missing', stressLacks);
  if (axes.xName !== 'travel') return lacking('no-travel-column', 'displacementMm');
  const window = traceWindow(test, recipe.trace);
  if (!window) return lacking('not-reached', `${recipe.trace.fromMm} mm`);
  const all = peaksBetween(y, window.from.index, window.to.index, recipe.trace.peakDropShare * y[test.peakIndex]!);
  const peaks = afterShare(test, all, recipe.trace.leaveOutShare ?? 0, window.to.x);
  if (peaks.length === 0) return lacking('not-reached', 'a peak between the bounds');
  const few: Flag[] =
    peaks.length < FEWEST_PEAKS
      ? [{ code: 'few-peaks', found: peaks.length, allowed: FEWEST_PEAKS, unit: 'peaks' }]
      : [];
  const points = [...windowEnds(window), ...peaks.map((row) => pointAt(test, 'trace-peak', row))];
  return measured(figure(peaks.map((row) => y[row]!)), axes.yUnit, points, [...window.flags, ...few]);
}

/** Without the peaks of the first part of the trace, counted from its first peak to its end (ISO 13937-2: the first quarter; from memory, high). */
function afterShare({ x }: PreparedTest, peaks: readonly number[], share: number, end: number): readonly number[] {
  const [first] = peaks;
  if (first === undefined || share === 0) return peaks;
  const from = x[first]! + share * (end - x[first]!);
  return peaks.filter((row) => x[row]! >= from);
}

/**
 * Rows of the peaks on [from, to]: a peak is a highest row from which the load falls by `drop`, after it had risen by
 * `drop` from the valley before; a fall at the start of the bounds is not a peak.
 */
export function peaksBetween(y: Float64Array, from: number, to: number, drop: number): number[] {
  const peaks: number[] = [];
  let low = from;
  let high = -1;
  for (let at = from; at <= to; at++) {
    if (high < 0 && y[at]! < y[low]!) low = at;
    else if (high < 0 && y[at]! >= y[low]! + drop && y[at]! > y[low]!) high = at;
    else if (high >= 0 && y[at]! > y[high]!) high = at;
    else if (high >= 0 && y[at]! <= y[high]! - drop && y[at]! < y[high]!) {
      peaks.push(high);
      [low, high] = [at, -1];
    }
  }
  return peaks;
}

function median(heights: readonly number[]): number {
  const sorted = [...heights].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
