import type { Curve } from '../curve/curve.js';
import type { ReductionRecipe, ResultKey } from '../recipe/recipe.js';
import { extensionEnd } from '../signals/extension-end.js';
import type { SignalDoubt, Signals } from '../signals/signal-doubt.js';
import { loadedAgain } from '../signals/loaded-again.js';
import { elasticFalls, extensionJumps } from '../signals/slips.js';
import type { Fall } from '../signals/slips.js';
import { withoutSpikes } from '../signals/without-spikes.js';
import { findBreak, highestRow } from './find-peak.js';
import type { PreparedAxes } from './prepare-axes.js';
import type { Flag, ReducedResult } from './reduction-outcome.js';

/** Axes whose signals were doubted, and what the doubts are. */
export interface DoubtedAxes {
  readonly axes: PreparedAxes;
  /** Last row up to which the strain may be read. */
  readonly lastStrainRow: number;
  readonly doubts: readonly SignalDoubt[];
  readonly falls: readonly Fall[];
}

/** Traces that stick and slip are full of what would be a disturbance elsewhere. */
const TRACES = ['peel', 'tear'];

/** Looks for what a sound record does not do, before anything is read from it. */
export function doubtSignals(axes: PreparedAxes, curve: Curve, recipe: ReductionRecipe): DoubtedAxes {
  const last = axes.y.length - 1;
  if (TRACES.includes(recipe.kind)) return { axes, lastStrainRow: last, doubts: [], falls: [] };
  const { y, doubts: spikes } = withoutSpikes(axes.y, axes.axes.yUnit);
  const mended = spikes.length === 0 ? axes : { ...axes, y, plainY: y };
  const peak = highestRow(axes.x, y, Infinity);
  const again = recipe.loading === undefined && !recipe.trace ? loadedAgain(y, y[peak]!) : null;
  const clock = curve.displacementMm ?? curve.timeS;
  const signals: Signals = { x: axes.x, y, clock: clock?.subarray(axes.firstRow, axes.firstRow + y.length) ?? null };
  const ended = isExtensometer(axes, curve)
    ? (cellsEnd(axes, curve) ?? extensionEnd(signals, findBreak(y, peak, recipe), axes.axes.xUnit))
    : null;
  const lastStrainRow = ended ? ended.fromRow - 1 : last;
  const until = Math.min(peak, lastStrainRow);
  const jumps = axes.axes.xName === 'strain' ? extensionJumps(signals, until, axes.axes.xUnit) : [];
  const falls = axes.axes.xName === 'row' ? [] : elasticFalls(signals, until);
  const doubts = [...spikes, ...(ended ? [ended] : []), ...jumps, ...(again ? [again] : [])];
  return { axes: mended, lastStrainRow, doubts, falls };
}

/** The file itself says that there is no extension any more. */
function cellsEnd({ x, axes, firstRow }: PreparedAxes, { strainRows }: Curve): SignalDoubt | null {
  const fromRow = (strainRows ?? Infinity) - firstRow;
  if (!(fromRow < x.length)) return null;
  const last = x[Math.max(0, fromRow - 1)]!;
  return { code: 'extension-ended', fromRow, toRow: x.length - 1, found: last, allowed: last, unit: axes.xUnit };
}

function isExtensometer({ axes, isCrosshead }: PreparedAxes, curve: Curve): boolean {
  return !isCrosshead && axes.xName === 'strain' && (curve.extensionMm !== undefined || curve.strain !== undefined);
}

/** A doubt as a remark on a result or on the whole curve. */
export function flagOf({ code, found, allowed, unit, fromRow, toRow }: SignalDoubt): Flag {
  return { code, found, allowed, unit, rows: [fromRow, toRow] };
}

/** Results that read how far the specimen was strained; the others read loads alone. */
const READ_STRAIN: readonly ResultKey[] = [
  'strain-at-peak',
  'plastic-strain-at-peak',
  'strain-at-break',
  'plastic-strain-at-break',
  'modulus',
  'stiffness',
  'offset-yield',
  'stress-at-strain',
  'energy-to-peak',
  'energy-to-break',
  'work-density-to-break',
  'hardening-exponent',
  'hardening-coefficient',
];

/** Results for which it matters which of several loadings is read, even the first. */
const READ_A_RISE: readonly ResultKey[] = ['modulus', 'stiffness'];

/** The doubts that touch a result: it reads a row on or after theirs, and the channel that they are about. The peak has those of the whole curve. */
export function doubtsTouching(
  { key, points }: Pick<ReducedResult, 'key' | 'points'>,
  doubts: readonly SignalDoubt[],
): Flag[] {
  const lastRow = Math.max(-1, ...points.map(({ index }) => index));
  const touches = ({ code, fromRow }: SignalDoubt) => {
    if (code === 'loaded-again') return READ_A_RISE.includes(key) || (key !== 'peak-load' && lastRow >= fromRow);
    return code === 'extension-jumped' && READ_STRAIN.includes(key) && lastRow >= fromRow - 1;
  };
  return doubts.filter(touches).map(flagOf);
}

/** Whether a result would read the strain where it no longer is one. */
export function readsPastStrain(
  { key, points }: Pick<ReducedResult, 'key' | 'points'>,
  lastStrainRow: number,
): boolean {
  return READ_STRAIN.includes(key) && points.some(({ index }) => index > lastStrainRow);
}
