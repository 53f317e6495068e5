import type { Flag } from './reduction-outcome.js';
import { firstReaching } from './crossings.js';
import type { PreparedTest } from './prepared-test.js';
import { typicalStep } from '../signals/typical-step.js';
import type { Fall } from '../signals/slips.js';

/** Share of the peak at the first row above which a curve does not start unloaded: about what a force reading of class 1 may be off (common practice, no source). */
const MOST_START_SHARE = 0.01;
/** Share of the x at the peak that toe compensation may take off without a remark (common practice, no source). */
const MOST_FOOT_SHARE = 0.2;

/** Remarks on the curve as a whole. */
export function curveFlags(test: PreparedTest): Flag[] {
  return [
    timeRunsBack(test),
    rowsMissing(test),
    startsUnderLoad(test),
    footMovedFar(test),
    slackAtStart(test),
    ...test.falls.map((fall) => fellAndCameBack(test, fall)),
  ].filter((flag) => flag !== null);
}

/** A load below this share of the highest is none yet, … (common practice, no source) */
const NO_LOAD_SHARE = 0.005;
/** … and so much of the x at the peak without load is slack that the figures of travel hold (common practice, no source). */
const MOST_SLACK_SHARE = 0.015;

/** Travel before the load begins to rise, where no toe compensation takes it out. */
function slackAtStart({ x, y, peakIndex, recipe, axes, lastStrainRow }: PreparedTest): Flag | null {
  if (recipe.toe.way !== 'none' || recipe.loading !== undefined || axes.xName === 'row') return null;
  const first = firstReaching(y, NO_LOAD_SHARE * y[peakIndex]!, 0, peakIndex);
  const allowed = MOST_SLACK_SHARE * x[Math.min(peakIndex, lastStrainRow)]!;
  const found = first > 0 ? x[first - 1]! - x[0]! : 0;
  return found > allowed ? { code: 'slack-at-start', found, allowed, unit: axes.xUnit } : null;
}

function fellAndCameBack({ y, axes }: PreparedTest, { top, bottom, back }: Fall): Flag {
  return {
    code: 'load-fell-and-came-back',
    found: y[bottom]!,
    allowed: y[top]!,
    unit: axes.yUnit,
    rows: [top, back],
  };
}

/** A step of the clock so many times the usual one is a gap in the record (common practice, no source). */
const GAP_TIMES = 10;

function rowsMissing({ curve: { timeS: time }, firstRow, breakIndex }: PreparedTest): Flag | null {
  if (!time) return null;
  const usual = typicalStep(time, firstRow, firstRow + breakIndex);
  for (let at = firstRow + 1; at <= firstRow + breakIndex; at++) {
    const step = time[at]! - time[at - 1]!;
    if (usual > 0 && step > GAP_TIMES * usual)
      return { code: 'rows-missing', found: step, allowed: usual, unit: 's', rows: [at - 1, at] };
  }
  return null;
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
  return Math.abs(y[0]!) > allowed ? { code: 'starts-under-load', found: y[0]!, allowed, unit: axes.yUnit } : null;
}

function footMovedFar({ toeShift, x, peakIndex, lastStrainRow, axes }: PreparedTest): Flag | null {
  const allowed = MOST_FOOT_SHARE * Math.abs(x[Math.min(peakIndex, lastStrainRow)]!);
  return Math.abs(toeShift) > allowed ? { code: 'foot-moved-far', found: toeShift, allowed, unit: axes.xUnit } : null;
}
