import type { SignalDoubt, Signals } from './signal-doubt.js';
import { typicalStep } from './typical-step.js';

/** Rows on either side from which the slope before and after a slip is told. */
const BESIDE = 8;
/** A slope as steep as this share of the one before is the elastic line again; a yielding specimen is far softer. */
const ELASTIC_AGAIN = 0.5;
/** A jump of the extension is worth a doubt from so many usual steps on (common practice, no source). */
const JUMP_STEPS = 6;
/** A fall of the load is worth a doubt from this share of the highest on (common practice, no source). */
const FALL_SHARE = 0.005;

/**
 * Where the extensometer slipped on the specimen: the extension jumps while the load stands, and the line before and after is
 * equally steep. At yielding the line after the jump is far softer.
 *
 * @param until rows up to the highest load
 */
export function extensionJumps({ x, y }: Signals, until: number, unit: string): SignalDoubt[] {
  const step = typicalStep(x, 0, until);
  const doubts: SignalDoubt[] = [];
  for (let at = BESIDE; at <= until - BESIDE && step > 0; at++) {
    const jump = x[at]! - x[at - 1]!;
    if (Math.abs(jump) <= JUMP_STEPS * step) continue;
    const [before, after] = [slopeOf(x, y, at - BESIDE, at - 1), slopeOf(x, y, at, at + BESIDE - 1)];
    const followed = Math.abs((y[at]! - y[at - 1]!) / jump);
    const beside = Math.max(typicalStep(x, at - BESIDE, at - 1), typicalStep(x, at, at + BESIDE - 1));
    const standsOut = Math.abs(jump) > JUMP_STEPS * beside;
    if (standsOut && before > 0 && after > ELASTIC_AGAIN * before && followed < ELASTIC_AGAIN * before)
      doubts.push({
        code: 'extension-jumped',
        fromRow: at,
        toRow: until,
        found: jump,
        allowed: JUMP_STEPS * step,
        unit,
      });
  }
  return doubts;
}

/** A fall of the load that is not the specimen's yielding: from `top` it falls, and climbs again along the elastic line. */
export interface Fall {
  readonly top: number;
  readonly bottom: number;
  /** First row that is as high as the top again. */
  readonly back: number;
}

/**
 * Where the load fell and came back along a line about as steep as before: a grip slipped, or the specimen was unloaded.
 * After an upper yield the load does not come back so.
 *
 * @param until rows up to the highest load
 */
export function elasticFalls({ x, y }: Signals, until: number): Fall[] {
  const falls: Fall[] = [];
  const least = FALL_SHARE * y[until]!;
  let top = 0;
  for (let at = 1; at <= until; at++) {
    if (y[at]! >= y[top]!) {
      top = at;
      continue;
    }
    if (y[top]! - y[at]! < least) continue;
    const back = firstBack(y, top, at, until);
    if (back < 0) return falls;
    const bottom = lowest(y, top, back);
    if (isElastic(x, y, top, bottom, back)) falls.push({ top, bottom, back });
    at = back;
    top = back;
  }
  return falls;
}

function isElastic(x: Float64Array, y: Float64Array, top: number, bottom: number, back: number): boolean {
  const before = slopeOf(x, y, Math.max(0, top - BESIDE), top);
  const climb = slopeOf(x, y, bottom, back);
  return before > 0 && climb > ELASTIC_AGAIN * before;
}

function firstBack(y: Float64Array, top: number, from: number, until: number): number {
  for (let at = from; at <= until; at++) if (y[at]! > y[top]!) return at;
  return -1;
}

function lowest(y: Float64Array, from: number, to: number): number {
  let low = from;
  for (let at = from; at <= to; at++) if (y[at]! < y[low]!) low = at;
  return low;
}

/** Least-squares slope over rows [from, to]; 0 where x does not vary. */
function slopeOf(x: Float64Array, y: Float64Array, from: number, to: number): number {
  const n = to - from + 1;
  let [meanX, meanY, spread, shared] = [0, 0, 0, 0];
  for (let at = from; at <= to; at++) [meanX, meanY] = [meanX + x[at]! / n, meanY + y[at]! / n];
  for (let at = from; at <= to; at++) {
    spread += (x[at]! - meanX) ** 2;
    shared += (x[at]! - meanX) * (y[at]! - meanY);
  }
  return spread > 0 ? shared / spread : 0;
}
