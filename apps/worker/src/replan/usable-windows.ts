import { intersectWindows, subtractWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '#libs/calendar/src/index.js';
import type { Item } from '#libs/matching/src/index.js';

/**
 * When an item may be used at all: in service, not promised elsewhere, and, where it needs calibration, while every
 * direction that was ever calibrated still is. The planner does not know directions, so the shortest one counts.
 */
export function usableWindows(item: Item, horizon: TimeWindow): TimeWindow[] {
  if (item.state !== 'in-service') return [];
  return subtractWindows(item.needsCalibration ? calibrated(item, horizon) : [horizon], item.heldWindows);
}

function calibrated(item: Item, horizon: TimeWindow): TimeWindow[] {
  const directions = [...new Set(item.calibrations.map(({ direction }) => direction))];
  if (directions.length === 0) return [];
  return directions
    .map((direction) => item.calibrations.filter((calibration) => calibration.direction === direction))
    .map((list) => unionWindows(list.map(({ validFromMs, dueMs }) => ({ startMs: validFromMs, endMs: dueMs }))))
    .reduce((common, windows) => intersectWindows(common, windows), [horizon]);
}
