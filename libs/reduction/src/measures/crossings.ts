/** A place between two rows: at row `index` plus `share` of the step to the next. */
export interface Place {
  readonly index: number;
  readonly share: number;
  readonly x: number;
  readonly y: number;
}

/** First row in [from, to] whose value is at least `level`, or -1. */
export function firstReaching(values: Float64Array, level: number, from: number, to: number): number {
  for (let at = from; at <= to; at++) if (values[at]! >= level) return at;
  return -1;
}

/**
 * Where a column first reaches a level on rows [from, to], between rows by straight line; null when it does not.
 * A column that starts above the level has no such place.
 */
export function placeReaching(
  x: Float64Array,
  y: Float64Array,
  along: 'x' | 'y',
  level: number,
  from: number,
  to: number,
): Place | null {
  const values = along === 'x' ? x : y;
  const index = firstReaching(values, level, from, to);
  if (index < 0) return null;
  if (values[index] === level) return { index, share: 0, x: x[index]!, y: y[index]! };
  if (index === from) return null;
  const before = values[index - 1]!;
  return between(x, y, index - 1, (level - before) / (values[index]! - before));
}

/** The place at `share` of the way from row `index` to the next. */
export function between(x: Float64Array, y: Float64Array, index: number, share: number): Place {
  const next = Math.min(index + 1, x.length - 1);
  return { index, share, x: x[index]! + share * (x[next]! - x[index]!), y: y[index]! + share * (y[next]! - y[index]!) };
}

/** First place after row `from` (up to `to`) where y falls to the line slope · (x − foot); null when it stays above. */
export function placeFallingToLine(
  x: Float64Array,
  y: Float64Array,
  slope: number,
  foot: number,
  from: number,
  to: number,
): Place | null {
  let above = y[from]! - slope * (x[from]! - foot);
  for (let at = from + 1; at <= to; at++) {
    const now = y[at]! - slope * (x[at]! - foot);
    if (above > 0 && now <= 0) return between(x, y, at - 1, above / (above - now));
    above = now;
  }
  return null;
}

/** Integral of y over x on rows [from, to], by trapezoids. */
export function areaUnder(x: Float64Array, y: Float64Array, from: number, to: number): number {
  let area = 0;
  for (let at = from + 1; at <= to; at++) area += ((y[at]! + y[at - 1]!) / 2) * (x[at]! - x[at - 1]!);
  return area;
}
