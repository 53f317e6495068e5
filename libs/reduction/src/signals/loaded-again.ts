import type { SignalDoubt } from './signal-doubt.js';

/** A load that falls below this share of its top was taken off, … (common practice, no source) */
const TAKEN_OFF = 0.6;
/** … and one that climbs back to this share of it was put on again (common practice, no source). */
const PUT_ON = 0.8;
/** Lower tops than this share of the highest load are seating (common practice, no source). */
const LEAST_TOP = 0.1;

/**
 * Where a record that should be one ramp is loaded more than once: load cycles, or a loop of unloading.
 *
 * @param y load or stress, positive in the direction of the test
 * @param peak the highest of it
 * @returns rows from the first top to where the load is back for the last time, with the number of loadings; null for one ramp
 */
export function loadedAgain(y: Float64Array, peak: number): SignalDoubt | null {
  let [top, firstTop, lastBack, loadings, isOff] = [0, -1, -1, 1, false];
  for (let at = 1; at < y.length; at++) {
    if (isOff && y[at]! >= PUT_ON * y[top]!) {
      loadings++;
      [firstTop, lastBack, isOff] = [firstTop < 0 ? top : firstTop, at, false];
    }
    if (y[at]! > y[top]!) top = at;
    isOff ||= y[at]! < TAKEN_OFF * y[top]! && y[top]! >= LEAST_TOP * peak;
  }
  return firstTop < 0
    ? null
    : { code: 'loaded-again', fromRow: firstTop, toRow: lastBack, found: loadings, allowed: 1, unit: '1' };
}
