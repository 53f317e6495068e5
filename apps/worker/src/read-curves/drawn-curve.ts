import { CURVE_CHANNELS, rowsToDraw } from '#libs/reduction/src/index.js';
import type { Curve } from '#libs/reduction/src/index.js';

/** Points of a curve that are kept to be drawn; more cannot be told apart on a screen. */
export const MOST_POINTS = 2_000;
const DIGITS = 7;

/**
 * Every channel of a curve as recorded, thinned for the plot so that no peak and no drop of the load is lost.
 *
 * @param keep rows that stay whatever they hold: those that results rest on
 */
export function drawnCurve(curve: Curve, keep: readonly number[]): Record<string, number[]> {
  const load = curve.forceN ?? curve.torqueNm ?? curve.stressMPa;
  if (!load) return {};
  const kept = new Set(keep.filter((row) => row >= 0 && row < curve.pointCount));
  const rows = [...new Set([...rowsToDraw(load, MOST_POINTS - kept.size), ...kept])].sort((a, b) => a - b);
  const channels = CURVE_CHANNELS.flatMap((channel) => {
    const values = curve[channel];
    return values ? [[channel, rows.map((row) => rounded(values[row]!))] as const] : [];
  });
  return Object.fromEntries(channels);
}

function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}
