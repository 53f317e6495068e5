import { CURVE_CHANNELS } from '#libs/reduction/src/index.js';
import type { Curve } from '#libs/reduction/src/index.js';

/** Points of a curve that are kept to be drawn; more cannot be told apart on a screen. */
const MOST_POINTS = 2_000;
const DIGITS = 7;

/**
 * A curve thinned for the plot: from each stretch the lowest and the highest load, so that no peak and no drop is lost; first and
 * last rows stay.
 *
 * @param keep rows that stay whatever they hold, e.g. those that results rest on
 */
export function drawnCurve(curve: Curve, keep: readonly number[] = []): Record<string, number[]> {
  const load = curve.forceN ?? curve.torqueNm ?? curve.stressMPa!;
  const rows = rowsToDraw(load, keep.filter((row) => row >= 0 && row < curve.pointCount));
  const channels = CURVE_CHANNELS.flatMap((channel) => {
    const values = curve[channel];
    return values ? [[channel, rows.map((row) => rounded(values[row]!))] as const] : [];
  });
  return Object.fromEntries(channels);
}

function rowsToDraw(load: Float64Array, keep: readonly number[]): number[] {
  if (load.length <= MOST_POINTS) return Array.from(load.keys());
  const stretches = Math.floor((MOST_POINTS - keep.length - 2) / 2);
  const rows = new Set([0, load.length - 1, ...keep]);
  for (let at = 0; at < stretches; at++) {
    const from = Math.floor((at * load.length) / stretches);
    const to = Math.floor(((at + 1) * load.length) / stretches);
    let [low, high] = [from, from];
    for (let row = from + 1; row < to; row++) {
      if (load[row]! < load[low]!) low = row;
      if (load[row]! > load[high]!) high = row;
    }
    rows.add(low).add(high);
  }
  return [...rows].sort((a, b) => a - b);
}

function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}
