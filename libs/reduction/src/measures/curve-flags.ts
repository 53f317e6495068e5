import type { Flag } from './reduction-outcome.js';
import type { PreparedTest } from './prepared-test.js';

/** Share of the peak at the first row above which a curve does not start unloaded (common practice, no source). */
const MOST_START_SHARE = 0.05;
/** Share of the x at the peak that toe compensation may take off without a remark (common practice, no source). */
const MOST_FOOT_SHARE = 0.2;

/** Remarks on the curve as a whole. */
export function curveFlags(test: PreparedTest): Flag[] {
  return [timeRunsBack(test), startsUnderLoad(test), footMovedFar(test)].filter((flag) => flag !== null);
}

function timeRunsBack({ curve }: PreparedTest): Flag | null {
  const time = curve.timeS;
  if (!time) return null;
  for (let at = 1; at < time.length; at++) {
    if (time[at]! < time[at - 1]!)
      return { code: 'time-runs-back', found: time[at]!, allowed: time[at - 1]!, unit: 's' };
  }
  return null;
}

function startsUnderLoad({ y, peakIndex, axes }: PreparedTest): Flag | null {
  const allowed = MOST_START_SHARE * y[peakIndex]!;
  return y[0]! > allowed ? { code: 'starts-under-load', found: y[0]!, allowed, unit: axes.yUnit } : null;
}

function footMovedFar({ toeShift, x, peakIndex, axes }: PreparedTest): Flag | null {
  const allowed = MOST_FOOT_SHARE * Math.abs(x[peakIndex]!);
  return Math.abs(toeShift) > allowed ? { code: 'foot-moved-far', found: toeShift, allowed, unit: axes.xUnit } : null;
}
