import { formatNumber } from '#libs/units/src/index.js';
import type { Flag, FlagCode, MissingReason, MissingResult } from './reduction-outcome.js';

const FLAGS: Readonly<Record<FlagCode, (found: string, allowed: string) => string>> = {
  'slope-window-short': (found, allowed) =>
    `The slope rests on ${found}; at least ${allowed} are wanted. Record faster or widen the bounds.`,
  'slope-line-poor': (found, allowed) =>
    `The straight part is not straight: r² is ${found}, wanted is ${allowed} or more. Look at the bounds.`,
  'slope-from-crosshead': () =>
    'The slope comes from crosshead travel, which holds the give of the load train; use an extensometer for a modulus.',
  'no-yield-drop': () => 'The curve has no yield drop; report an offset yield.',
  'peak-at-end': () => 'The load was still rising when the curve ended; the true peak may be higher.',
  'peak-not-passed': (found, allowed) =>
    `The curve ends at ${found}, before the load fell to ${allowed}: a higher peak may have followed.`,
  'peak-broad': (found, allowed) =>
    `The top is flat: over ${found} only the scatter of the load tells which row is the highest, up to ${allowed} is usual. How far the test had gone at the peak is uncertain by as much.`,
  'load-still-high-at-end': (found, allowed) =>
    `The curve ends at ${found}, before the load fell to ${allowed}; its end stands in for the break.`,
  'load-flat-at-peak': (found) => `The load stays at its highest value over ${found}; check for a clipped signal.`,
  'sign-turned': () => 'The load was recorded with the opposite sign and was turned.',
  'time-runs-back': (found, allowed) => `Time runs back from ${allowed} to ${found}.`,
  'starts-under-load': (found, allowed) =>
    `The curve starts at ${found}; up to ${allowed} is usual. Check preload and zero.`,
  'foot-moved-far': (found, allowed) => `Toe compensation moved zero by ${found}; up to ${allowed} is usual.`,
  'trace-short': (found, allowed) => `The trace ends at ${found}, before the bound of ${allowed}.`,
  'few-peaks': (found, allowed) => `Only ${found} were found between the bounds; at least ${allowed} are wanted.`,
  'break-near-mark': (found, allowed) =>
    `The break lies ${found} from a mark, nearer than ${allowed}; the elongation may be too low.`,
  'deflection-large': (found, allowed) =>
    `Deflection reaches ${found} of the span; above ${allowed} the simple formula is no longer fair.`,
  'stress-at-strain-past-peak': (found, allowed) =>
    `The peak lies at ${found}, before the strain of ${allowed}; report the peak as the strength.`,
  'extension-ended': (found) =>
    `The extensometer was taken off, or stood still, at ${found}; strains after it are not reported, loads are.`,
  'extension-jumped': (found) =>
    `The extension jumps by ${found} while the load stands: the extensometer slipped. What is read after it is in doubt.`,
  'load-fell-and-came-back': (found, allowed) =>
    `The load fell from ${allowed} to ${found} and came back along the same line: a grip slipped, or the specimen was unloaded. It is no yield point.`,
  'loaded-again': (found) =>
    `The record holds ${found} loadings, and the method reads it as one ramp. Send the loading that counts, or use a method that names it.`,
  'spike-left-out': (found, allowed) =>
    `A reading of ${found} beside ${allowed} is a disturbance of the signal; it was left out. Look at the record.`,
  'rows-missing': (found, allowed) =>
    `The record has a gap of ${found}, where ${allowed} is usual; a peak in the gap is lost.`,
  'coarse-at-yield': (found, allowed) =>
    `The rows at the upper yield are ${found} of it apart, up to ${allowed} is usual: its top may lie between them. Record faster.`,
  'slack-at-start': (found) =>
    `The travel holds ${found} before the load rises: slack, which the method does not take out. Preload the specimen.`,
  'strain-from-crosshead': () =>
    'The strain comes from crosshead travel, which holds the give of the load train; an offset needs an extensometer.',
  'slope-window-curved': (found, allowed) =>
    `The straight part bends: its halves differ by ${found} of the slope, up to ${allowed} is usual. Look at the bounds.`,
  'chord-noisy': (found, allowed) =>
    `The two ends of the chord scatter by ${found} of the slope, up to ${allowed} is usual. Record finer, or use a regression.`,
  'peak-at-limit': (found, allowed) =>
    `The load still rises at ${found}, where the method stops looking (${allowed}); the figure is that at the limit.`,
  'yields-without-hardening': (found) =>
    `The load only falls after the upper yield of ${found}; it stands in for the strength, which the metal does not show.`,
};

/** One flag as a sentence for people, with its figures. */
export function sayFlag({ code, found, allowed, unit, rows }: Flag): string {
  const shown = (value: number) => `${formatNumber(value)}${unit === '1' ? '' : `\u00a0${unit}`}`;
  return FLAGS[code](shown(found), shown(allowed)) + (rows ? sayRows(rows) : '');
}

/** Rows are counted from 1, as in a table of the file. */
function sayRows([from, to]: readonly [number, number]): string {
  return from === to ? ` (row ${from + 1})` : ` (rows ${from + 1} to ${to + 1})`;
}

const REASONS: Readonly<Record<MissingReason, string>> = {
  'no-load-column': 'the curve has no column for it',
  'no-travel-column': 'the curve has no column for it',
  'dimension-missing': 'a dimension is missing',
  'recipe-missing': 'the method does not state it',
  'slope-missing': 'no straight part was found',
  'not-reached': 'the curve does not reach it',
  'no-yield-drop': 'the curve has no yield drop; report an offset yield',
  'too-few-points': 'too few points lie between the bounds',
  'not-finite': 'the figures are too large or too small to be kept',
  'does-not-apply': 'it does not apply to this kind of test',
  'extension-ended': 'the extensometer was taken off or stood still before it',
};

/** Why a result is missing, as words that follow its name. */
export function sayMissing({ reason, what }: Pick<MissingResult, 'reason' | 'what'>): string {
  return `${REASONS[reason]} (${what})`;
}
