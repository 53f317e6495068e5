import { medianOf } from '../statistics/describe-sample.js';
import type { PreparedTest } from './prepared-test.js';
import type { Flag } from './reduction-outcome.js';

/** Rows in a row at the very peak from which a clipped signal is suspected (common practice, no source). */
const FLAT_ROWS = 3;
/** A peak in so last a part of the record, … (common practice, no source) */
const END_SHARE = 0.03;
/** … after which the load has not fallen to this share of it, may not be the highest (common practice, no source). */
const STILL_HIGH = 0.5;

/** What a reader of the highest load should know. */
export function peakFlags(test: PreparedTest): Flag[] {
  const { y, peakIndex } = test;
  const [peak, last] = [y[peakIndex]!, y[y.length - 1]!];
  const flags: Flag[] = [];
  let flat = 1;
  while (y[peakIndex + flat] === peak) flat++;
  if (flat >= FLAT_ROWS) flags.push({ code: 'load-flat-at-peak', found: flat, allowed: FLAT_ROWS - 1, unit: 'points' });
  const rowsAfter = y.length - 1 - peakIndex;
  if (rowsAfter === 0 || (rowsAfter < END_SHARE * y.length && last >= STILL_HIGH * peak))
    flags.push({ code: 'peak-at-end', found: peakIndex + 1, allowed: y.length - 1, unit: 'points' });
  else flags.push(...notPassed(test));
  return [...flags, ...atLimit(test)];
}

/** Where a break is waited for and not seen, the record may have been cut. A method that stops at a strain waits for none. */
function notPassed({ recipe, y, peakIndex, axes }: PreparedTest): Flag[] {
  if (recipe.break.way !== 'load-drop' || recipe.peakUpToStrain !== undefined) return [];
  const [found, allowed] = [y[y.length - 1]!, recipe.break.share * y[peakIndex]!];
  return found >= allowed ? [{ code: 'peak-not-passed', found, allowed, unit: axes.yUnit }] : [];
}

/** The load still rises where the recipe stops looking: the figure is that at the limit, not a highest one. */
function atLimit({ recipe, x, y, peakIndex, toeShift, axes }: PreparedTest): Flag[] {
  const allowed = recipe.peakUpToStrain;
  const next = y[peakIndex + 1];
  if (allowed === undefined || next === undefined || !(next > y[peakIndex]!) || x[peakIndex + 1]! - toeShift <= allowed)
    return [];
  return [{ code: 'peak-at-limit', found: x[peakIndex]! - toeShift, allowed, unit: axes.xUnit }];
}

/** Rows on either side of the peak from which the scatter of the load is told. */
const BESIDE = 50;
/** Third differences take out a round top, and scatter √20 times as much as independent readings; their median is 0.6745 of that (textbook). */
const MEDIAN_OF_THIRD_DIFFERENCES = 0.6745 * Math.sqrt(20);
/** The highest of many readings and its neighbours may differ by so many standard deviations by scatter alone, … */
const SCATTERS = 4;
/** … and a row that is so many lower is past the top. */
const PAST_SCATTERS = 8;
/** So much of the travel at the peak may lie between rows that are as high but for their scatter (common practice, no source). */
const MOST_BREADTH = 0.03;

/** Where the top is flat, the scatter of the load alone decides which row is the highest, and how far the test had gone there. */
export function broadPeakFlags({ x, y, peakIndex, toeShift, axes }: PreparedTest): Flag[] {
  const scatter = scatterAt(y, peakIndex);
  const [from, to] = [lastAsHigh(y, peakIndex, -1, scatter), lastAsHigh(y, peakIndex, 1, scatter)];
  const [found, allowed] = [x[to]! - x[from]!, MOST_BREADTH * (x[peakIndex]! - toeShift)];
  return found > allowed ? [{ code: 'peak-broad', found, allowed, unit: axes.xUnit, rows: [from, to] }] : [];
}

function lastAsHigh(y: Float64Array, peakIndex: number, step: 1 | -1, scatter: number): number {
  let found = peakIndex;
  for (let at = peakIndex; y[at]! >= y[peakIndex]! - PAST_SCATTERS * scatter; at += step)
    if (y[at]! >= y[peakIndex]! - SCATTERS * scatter) found = at;
  return found;
}

function scatterAt(y: Float64Array, peakIndex: number): number {
  const differences: number[] = [];
  const last = Math.min(y.length - 1, peakIndex + BESIDE);
  for (let at = Math.max(3, peakIndex - BESIDE); at <= last; at++)
    differences.push(Math.abs(y[at]! - 3 * y[at - 1]! + 3 * y[at - 2]! - y[at - 3]!));
  return differences.length === 0 ? 0 : medianOf(differences) / MEDIAN_OF_THIRD_DIFFERENCES;
}
