import { fitLine } from '../statistics/fit-line.js';
import { firstReaching } from './crossings.js';
import type { Loading } from './find-slope.js';

/** Each candidate line spans so much of the load at the peak, … (common practice, no source). */
const SPAN_SHARE = 0.1;
/** … begins below this share of it, since slack and seating are taken up at small loads, … (common practice, no source) */
const LATEST_START = 0.4;
/** … and the candidates begin so far apart. */
const APART = 0.02;
/** The slack ends at the first line that is about as steep as the steepest (common practice, no source). */
const NEARLY_STEEPEST = 0.98;
/** Below it the curve must rise clearly less, else there is no slack: a stiffening composite is not slack (common practice, no source). */
const SLACK_SLOPE = 0.8;
const FEWEST_ROWS = 4;

interface Line {
  readonly from: number;
  readonly slope: number;
  readonly footX: number;
}

/**
 * Where the first straight part above the slack meets zero load. A curve that is straight, or bends over, or stiffens
 * slowly from its very start has no slack: its zero stays where it was recorded.
 *
 * @returns the x of the corrected zero; the x of the first row where there is no slack
 */
export function takeUpFoot(loading: Loading): number {
  const lines = candidateLines(loading);
  const steepest = Math.max(0, ...lines.map(({ slope }) => slope));
  const chosen = lines.find(({ slope }) => slope >= NEARLY_STEEPEST * steepest);
  const start = loading.x[0]!;
  return chosen && isSlackBelow(loading, chosen) ? Math.max(start, chosen.footX) : start;
}

function candidateLines({ x, y, peakIndex }: Loading): Line[] {
  const lines: Line[] = [];
  const peak = y[peakIndex]!;
  let first = 0;
  for (let share = 0; share <= LATEST_START; share += APART) {
    first = firstReaching(y, share * peak, first, peakIndex);
    if (first < 0) break;
    const past = firstReaching(y, (share + SPAN_SHARE) * peak, first, peakIndex);
    const last = Math.min(peakIndex, Math.max(past, first + FEWEST_ROWS - 1));
    if (past < 0 || !(x[last]! > x[first]!)) break;
    const { slope, intercept } = fitLine(x, y, first, last + 1);
    if (slope > 0) lines.push({ from: first, slope, footX: -intercept / slope });
  }
  return lines;
}

/** How the curve rises from its first row to the chosen line. */
function isSlackBelow({ x, y }: Loading, { from, slope }: Line): boolean {
  const run = x[from]! - x[0]!;
  return run > 0 && (y[from]! - y[0]!) / run < SLACK_SLOPE * slope;
}
