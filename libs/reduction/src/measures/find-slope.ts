import type { SlopeRecipe } from '../recipe/recipe.js';
import { fitLine } from '../statistics/fit-line.js';
import { firstReaching, placeReaching } from './crossings.js';
import type { Place } from './crossings.js';
import type { Flag, MissingReason, ResultPoint, SlopeLine } from './reduction-outcome.js';

/** Rows of a loading curve, up to the peak. */
export interface Loading {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly peakIndex: number;
}

export type SlopeFound =
  | {
      readonly state: 'found';
      readonly line: SlopeLine;
      readonly points: readonly ResultPoint[];
      readonly flags: readonly Flag[];
    }
  | { readonly state: 'not-found'; readonly reason: MissingReason; readonly what: string };

/** Fewest points that a regression should rest on (common practice, no source). */
const FEWEST_POINTS = 5;
/** Least coefficient of determination of a line that is called straight (common practice, no source). */
const LEAST_R_SQUARED = 0.999;
/** Most that the scatter of the rows may make of a chord, as a share of it (common practice, no source). */
const MOST_CHORD_SCATTER = 0.01;
/** Most that the upper half of a straight part may differ from the lower one in slope (common practice, no source). */
const MOST_CURVATURE = 0.05;
/** What noise alone may do between the halves, in standard deviations. */
const NOISE_SIGMAS = 3;
/** Rows from which on the halves are compared. */
const FEWEST_FOR_HALVES = 12;

/**
 * The slope of the straight part between the recipe's bounds, on the rows up to the peak.
 *
 * @param foot what the strain bounds count from
 */
export function findSlope(loading: Loading, recipe: SlopeRecipe, foot: number): SlopeFound {
  return recipe.way === 'chord' ? chord(loading, recipe, foot) : regression(loading, recipe, foot);
}

function limitsOf(
  { y, peakIndex }: Loading,
  { bounds }: SlopeRecipe,
  foot: number,
): { along: 'x' | 'y'; from: number; to: number } {
  if (bounds.over === 'strain') return { along: 'x', from: bounds.from + foot, to: bounds.to + foot };
  const unit = bounds.over === 'peak-share' ? y[peakIndex]! : 1;
  return { along: 'y', from: bounds.from * unit, to: bounds.to * unit };
}

/** (y₂ − y₁)/(x₂ − x₁) between the two bounds, each found between rows (ISO 527-1, chord). */
function chord(loading: Loading, recipe: SlopeRecipe, foot: number): SlopeFound {
  const { x, y, peakIndex } = loading;
  const { along, from, to } = limitsOf(loading, recipe, foot);
  const first =
    placeReaching(x, y, along, from, 0, peakIndex) ??
    (from === 0 && foot === 0 ? { index: 0, share: 0, x: x[0]!, y: y[0]! } : null);
  const second = first && placeReaching(x, y, along, to, first.index, peakIndex);
  if (!first || !second)
    return {
      state: 'not-found',
      reason: 'not-reached',
      what: `${first ? 'to' : 'from'} ${first ? recipe.bounds.to : recipe.bounds.from}`,
    };
  if (!(second.x > first.x)) return { state: 'not-found', reason: 'too-few-points', what: 'slope' };
  const slope = (second.y - first.y) / (second.x - first.x);
  return found(
    { slope, footX: first.x - first.y / slope, fromIndex: first.index, toIndex: second.index, rSquared: 1 },
    first,
    second,
    chordFlags(x, y, [first, second], slope),
  );
}

/**
 * What the two ends of a chord do not show: how many rows lie between them, and how far the rows scatter about a line. The chord's own
 * standard uncertainty is that of two single readings.
 */
function chordFlags(x: Float64Array, y: Float64Array, [first, second]: readonly [Place, Place], slope: number): Flag[] {
  const rows = second.index - first.index + 1;
  if (rows < FEWEST_POINTS)
    return [{ code: 'slope-window-short', found: rows, allowed: FEWEST_POINTS, unit: 'points' }];
  const { residualSd } = fitLine(x, y, first.index, second.index + 1);
  const share = (Math.SQRT2 * residualSd) / (slope * (second.x - first.x));
  const noisy: Flag[] =
    share > MOST_CHORD_SCATTER ? [{ code: 'chord-noisy', found: share, allowed: MOST_CHORD_SCATTER, unit: '1' }] : [];
  return [...noisy, ...stiffens(x, y, first.index, second.index)];
}

/** A chord is made for curves that bend over; one that is softer at its foot begins in slack that is not all taken up. */
function stiffens(x: Float64Array, y: Float64Array, first: number, last: number): Flag[] {
  const middle = (first + last) >> 1;
  const isSofterBelow = fitLine(x, y, first, middle + 1).slope < fitLine(x, y, middle, last + 1).slope;
  return isSofterBelow ? curvature(x, y, first, last) : [];
}

/** Least-squares line through every row between the bounds (ISO 527-1, regression). */
function regression(loading: Loading, recipe: SlopeRecipe, foot: number): SlopeFound {
  const { x, y } = loading;
  const rows = rowsBetween(loading, recipe, foot);
  if (!rows)
    return { state: 'not-found', reason: 'not-reached', what: `slope ${recipe.bounds.from} to ${recipe.bounds.to}` };
  const [first, last] = rows;
  if (last - first < 1 || !(x[last]! > x[first]!))
    return { state: 'not-found', reason: 'too-few-points', what: 'slope' };
  const { slope, intercept, rSquared } = fitLine(x, y, first, last + 1);
  const line = { slope, footX: -intercept / slope, fromIndex: first, toIndex: last, rSquared };
  return found(line, { index: first, x: x[first]!, y: y[first]! }, { index: last, x: x[last]!, y: y[last]! }, [
    ...regressionFlags(last - first + 1, rSquared),
    ...curvature(x, y, first, last),
  ]);
}

/** A window that reaches into the bend has a softer upper half; one that begins in the slack a softer lower half. */
function curvature(x: Float64Array, y: Float64Array, first: number, last: number): Flag[] {
  const middle = (first + last) >> 1;
  if (last - first + 1 < FEWEST_FOR_HALVES || !(x[middle]! > x[first]!) || !(x[last]! > x[middle]!)) return [];
  const [lower, upper] = [fitLine(x, y, first, middle + 1), fitLine(x, y, middle, last + 1)];
  const differs = Math.abs(upper.slope - lower.slope);
  const noise = NOISE_SIGMAS * Math.hypot(upper.slopeSd, lower.slopeSd);
  const found = differs / Math.max(upper.slope, lower.slope);
  if (!(found > MOST_CURVATURE) || differs < noise) return [];
  return [{ code: 'slope-window-curved', found, allowed: MOST_CURVATURE, unit: '1' }];
}

/** A bound met but for rounding, as a share of it, counts as met. */
export const HAIR = 1e-12;

function rowsBetween(loading: Loading, recipe: SlopeRecipe, foot: number): [number, number] | null {
  const { x, y, peakIndex } = loading;
  const { along, from, to } = limitsOf(loading, recipe, foot);
  const values = along === 'x' ? x : y;
  const hair = HAIR * Math.abs(to);
  const first = firstReaching(values, from - hair, 0, peakIndex);
  if (first < 0) return null;
  const past = firstReaching(values, to + hair, first, peakIndex);
  if (past >= 0) return [first, past - 1];
  return values[peakIndex]! >= to - hair ? [first, peakIndex] : null;
}

function regressionFlags(n: number, rSquared: number): Flag[] {
  const flags: Flag[] = [];
  if (n < FEWEST_POINTS) flags.push({ code: 'slope-window-short', found: n, allowed: FEWEST_POINTS, unit: 'points' });
  if (rSquared < LEAST_R_SQUARED)
    flags.push({ code: 'slope-line-poor', found: rSquared, allowed: LEAST_R_SQUARED, unit: '1' });
  return flags;
}

interface Spot {
  readonly index: number;
  readonly x: number;
  readonly y: number;
}

function found(line: SlopeLine, from: Spot, to: Spot, flags: readonly Flag[]): SlopeFound {
  if (!(line.slope > 0)) return { state: 'not-found', reason: 'slope-missing', what: 'a rising straight part' };
  const points: ResultPoint[] = [
    { role: 'from', index: from.index, x: from.x, y: from.y },
    { role: 'to', index: to.index, x: to.x, y: to.y },
  ];
  return { state: 'found', line, points, flags };
}
