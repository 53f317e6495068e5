import type { SignalDoubt, Signals } from './signal-doubt.js';
import { typicalStep } from './typical-step.js';

/** A removed extensometer jumps back by at least this share of what it had reached (common practice, no source). */
const JUMP_SHARE = 0.15;
/** … and by so many of its usual steps (common practice, no source). */
const JUMP_STEPS = 20;
/** The load goes on through the jump: at a fracture it does not (common practice, no source). */
const LOAD_STAYS = 0.7;
/** A channel that stands still is frozen once the crosshead has gone on far enough for so many of its usual steps. */
const FROZEN_STEPS = 30;
/** What stands still may scatter by so many of its usual steps (common practice, no source). */
const SCATTER_STEPS = 5;
/** … and for this share of what it had reached (common practice, no source). */
const FROZEN_SHARE = 0.05;

/**
 * From which row on the extensometer no longer tells the strain: it was taken off (its channel jumps back), or it stands still
 * while the crosshead goes on. Both are usual where a clip-on extensometer is taken off before the specimen breaks.
 *
 * @param until rows up to the break
 */
export function extensionEnd(signals: Signals, until: number, unit: string): SignalDoubt | null {
  const step = typicalStep(signals.x, 0, Math.min(until, rowOfHighest(signals.x, until)));
  return removed(signals, until, step, unit) ?? frozen(signals, until, step, unit);
}

function removed({ x, y }: Signals, until: number, step: number, unit: string): SignalDoubt | null {
  let highest = 0;
  for (let at = 1; at <= until; at++) {
    const back = highest - x[at]!;
    const isJump = x[at - 1]! - x[at]! > Math.max(JUMP_SHARE * highest, JUMP_STEPS * step);
    if (isJump && back > JUMP_SHARE * highest && y[at]! > LOAD_STAYS * y[at - 1]! && staysBack(x, at, until, highest))
      return { code: 'extension-ended', fromRow: at, toRow: until, found: x[at]!, allowed: highest, unit };
    if (x[at]! > highest) highest = x[at]!;
  }
  return null;
}

/** A single row that jumps back is noise; a removed extensometer never comes back. */
function staysBack(x: Float64Array, from: number, until: number, highest: number): boolean {
  for (let at = from; at <= until; at++) if (x[at]! > (1 - JUMP_SHARE / 2) * highest) return false;
  return true;
}

/** Looks from the break backwards: the channel stood at one value, but for its scatter, to the end, while the clock ran on. */
function frozen({ x, clock }: Signals, until: number, step: number, unit: string): SignalDoubt | null {
  let from = until;
  while (from > 0 && Math.abs(x[from - 1]! - x[until]!) <= SCATTER_STEPS * step) from--;
  while (from < until && Math.abs(x[from]! - x[until]!) > step / 2) from++;
  if (from === 0 || from >= until - 2) return null;
  const expected = expectedAdvance(x, clock, from, until);
  if (!(expected > Math.max(FROZEN_STEPS * step, FROZEN_SHARE * Math.abs(x[from]!)))) return null;
  return {
    code: 'extension-ended',
    fromRow: from + 1,
    toRow: until,
    found: x[from]!,
    allowed: x[from]! + expected,
    unit,
  };
}

/** How far the channel would have gone on rows [from, until] at its pace over the rows just before, by the clock or by rows. */
function expectedAdvance(x: Float64Array, clock: Float64Array | null, from: number, until: number): number {
  const back = Math.max(0, from - Math.max(5, Math.round(from / 5)));
  const ran = clock ? clock[from]! - clock[back]! : from - back;
  const runs = clock ? clock[until]! - clock[from]! : until - from;
  return ran > 0 && runs > 0 ? ((x[from]! - x[back]!) / ran) * runs : 0;
}

function rowOfHighest(x: Float64Array, until: number): number {
  let highest = 0;
  for (let at = 1; at <= until; at++) if (x[at]! > x[highest]!) highest = at;
  return highest;
}
