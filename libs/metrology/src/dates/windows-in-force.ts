import { unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';

/** How long one calibration says that it may be relied on: [validFromMs, dueMs), UTC ms. */
export interface CalibrationPeriod {
  validFromMs: number;
  dueMs: number;
  /** From when on it may no longer be relied on, because the item was found wrong or was altered; null when it stands. */
  withdrawnFromMs?: number | null;
}

/**
 * When an item is in calibration, joined and sorted.
 *
 * The newest calibration counts alone: from the instant a later one begins, an earlier one is no longer relied on, even
 * where it was due later. Of two that begin together (two directions of one certificate) the earlier due date counts.
 *
 * @param calibrations of one item, and of one direction where directions are calibrated apart; in any order
 */
export function windowsInForce(calibrations: readonly CalibrationPeriod[]): TimeWindow[] {
  const starts = [...new Set(calibrations.map(({ validFromMs }) => validFromMs))].sort((a, b) => a - b);
  return unionWindows(
    starts.map((startMs, index) => {
      const ends = calibrations.filter(({ validFromMs }) => validFromMs === startMs).map(endOf);
      return { startMs, endMs: Math.min(...ends, starts[index + 1] ?? Infinity) };
    }),
  );
}

function endOf({ dueMs, withdrawnFromMs }: CalibrationPeriod): number {
  return Math.min(dueMs, withdrawnFromMs ?? Infinity);
}
