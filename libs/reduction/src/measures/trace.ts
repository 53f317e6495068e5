import type { TraceRecipe } from '../recipe/recipe.js';
import { areaUnder, firstReaching, placeReaching } from './crossings.js';
import type { Place } from './crossings.js';
import { lacking, measured } from './prepared-test.js';
import type { Measure, Measured, PreparedTest } from './prepared-test.js';
import type { Flag, ResultPoint } from './reduction-outcome.js';

/** Mean over the bounds of the trace, N/mm: area under the trace by its length (ISO 8510, ASTM D1876: mean of the trace). */
export const meanPeel: Measure = (test) => overTrace(test, (window) => window.mean);

/** Lowest of the trace between the bounds, N/mm. */
export const leastPeel: Measure = (test) => overTrace(test, (window) => Math.min(...extremes(test, window)));

/** Highest of the trace between the bounds, N/mm. */
export const highestPeel: Measure = (test) => overTrace(test, (window) => Math.max(...extremes(test, window)));

/** The part of a trace that is judged. */
export interface TraceWindow {
  readonly from: Place;
  readonly to: Place;
  readonly mean: number;
  readonly flags: readonly Flag[];
}

/** The trace between the recipe's bounds; a trace that ends too soon is judged up to its end and flagged. */
export function traceWindow(test: PreparedTest, recipe: TraceRecipe): TraceWindow | null {
  const { x, y } = test;
  const start = x[0]!;
  const { travelPerMm = 1 } = recipe;
  const [fromMm, toMm] = [recipe.fromMm * travelPerMm, recipe.toMm * travelPerMm];
  const last = x.length - 1;
  const from =
    fromMm === 0 ? { index: 0, share: 0, x: start, y: y[0]! } : placeReaching(x, y, 'x', start + fromMm, 0, last);
  if (!from) return null;
  const reached = placeReaching(x, y, 'x', start + toMm, from.index, last);
  const to = reached ?? { index: last, share: 0, x: x[last]!, y: y[last]! };
  if (!(to.x > from.x)) return null;
  const flags: Flag[] = reached ? [] : [{ code: 'trace-short', found: to.x - start, allowed: toMm, unit: 'mm' }];
  return { from, to, mean: windowArea(x, y, from, to) / (to.x - from.x), flags };
}

function windowArea(x: Float64Array, y: Float64Array, from: Place, to: Place): number {
  const first = from.share > 0 ? from.index + 1 : from.index;
  if (first > to.index) return ((from.y + to.y) / 2) * (to.x - from.x);
  const head = ((from.y + y[first]!) / 2) * (x[first]! - from.x);
  const tail = ((to.y + y[to.index]!) / 2) * (to.x - x[to.index]!);
  return head + areaUnder(x, y, first, to.index) + tail;
}

function overTrace(test: PreparedTest, figure: (window: TraceWindow) => number): Measured[] {
  const { recipe, stressLacks, axes } = test;
  if (!recipe.trace) return lacking('recipe-missing', 'trace');
  if (stressLacks !== null) return lacking('dimension-missing', stressLacks);
  if (axes.xName !== 'travel') return lacking('no-travel-column', 'displacementMm');
  const window = traceWindow(test, recipe.trace);
  if (!window) return lacking('not-reached', `${recipe.trace.fromMm} mm`);
  return measured(figure(window), axes.yUnit, windowEnds(window), window.flags);
}

/** Both ends of the part that is judged, as points of the picture. */
export function windowEnds({ from, to }: TraceWindow): ResultPoint[] {
  return [
    { role: 'from', index: from.index, x: from.x, y: from.y },
    { role: 'to', index: to.index, x: to.x, y: to.y },
  ];
}

function extremes({ x, y }: PreparedTest, { from, to }: TraceWindow): [number, number] {
  let [least, most] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  for (let at = firstReaching(x, from.x, from.index, to.index); at >= 0 && at <= to.index; at++) {
    least = Math.min(least, y[at]!);
    most = Math.max(most, y[at]!);
  }
  return [least, most];
}
