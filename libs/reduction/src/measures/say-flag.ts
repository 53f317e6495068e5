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
};

/** One flag as a sentence for people, with its figures. */
export function sayFlag({ code, found, allowed, unit }: Flag): string {
  const shown = (value: number) => `${formatNumber(value)}${unit === '1' ? '' : `\u00a0${unit}`}`;
  return FLAGS[code](shown(found), shown(allowed));
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
};

/** Why a result is missing, as words that follow its name. */
export function sayMissing({ reason, what }: Pick<MissingResult, 'reason' | 'what'>): string {
  return `${REASONS[reason]} (${what})`;
}
