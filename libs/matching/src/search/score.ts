import { classReserve } from '#libs/accuracy/src/index.js';
import type { Needs } from '../ask/needs.js';
import { capacityOf } from '../rules/frame-capacity.js';
import { cellCapacityFor } from '../rules/cell-capacity.js';
import type { Frame, Item, LoadCell } from '../register/item.js';
import { isGoodFor } from '../rules/usable-windows.js';
import type { CalibrationNeed } from '../ask/calibration-need.js';
import type { MatchSettings } from '../ask/settings.js';

/** Part of the cell's capacity at which a peak reads best (common practice, no source). */
const BEST_SHARE = 0.4;

/** Points for how the force sits in cell and frame. */
export function forceFitPoints(frame: Frame, cell: LoadCell, needs: Needs, settings: MatchSettings): number {
  return cellFitPoints(cell, needs, settings) + frameFitPoints(frame, needs, settings);
}

/** Decades away from the best share of the cell. */
export function cellFitPoints(cell: LoadCell, needs: Needs, { weights }: MatchSettings): number {
  return weights.forceFit * Math.abs(Math.log10(needs.peakHigh.value / (BEST_SHARE * cellCapacityFor(cell, needs))));
}

/** A third of a cell's points for every decade that the frame could do more than is needed, so that large frames stay free. */
export function frameFitPoints(frame: Frame, needs: Needs, { weights }: MatchSettings): number {
  const decades = Math.max(0, Math.log10(capacityOf(frame.details, needs.direction) / needs.peakHigh.value));
  return (weights.forceFit * decades) / 3;
}

/** Points for a scarce link: the fewer equal units, the more points. */
export function scarcePoints(units: number, { weights }: MatchSettings): number {
  return weights.scarce / units;
}

/** Points for little reserve of class and range at the smallest force: none from a decade or a whole class better than needed. */
export function accuracyPoints(cell: LoadCell, need: CalibrationNeed, { weights }: MatchSettings): number {
  let reserve = 0;
  for (const each of cell.calibrations) {
    if (!isGoodFor(each, need)) continue;
    const own = Math.max(0, Math.log10(need.from / each.from)) + classReserve(each, need);
    reserve = Math.max(reserve, own);
  }
  return weights.accuracy * Math.max(0, 1 - reserve);
}

/** Kinds that may stay beside the train when the next test has no use for them. */
export const MAY_STAY: readonly Item['kind'][] = ['extensometer', 'guard', 'transducer'];

/** Minutes to put a unit on, or, when it hangs there already, the minutes of taking it off that are saved. */
export function changeMinutes(item: Item, fitted: boolean, settings: MatchSettings): number {
  const minutes = settings.changeMin[item.kind];
  if (fitted) return MAY_STAY.includes(item.kind) ? 0 : -minutes;
  return minutes + (item.kind === 'load-cell' ? settings.shiftCheckMin : 0);
}

/** Minutes to take off everything that hangs on a frame and may not stay. */
export function clearMinutes(items: readonly Item[], settings: MatchSettings): number {
  let minutes = 0;
  for (const { kind } of items) if (!MAY_STAY.includes(kind)) minutes += settings.changeMin[kind];
  return minutes;
}
