import { findUnit, fromInternal, isUnit, toInternal } from '#libs/units/src/index.js';
import type { Quantity, Unit } from '#libs/units/src/index.js';
import type { CurveChannel } from './curve.js';

/** What each channel measures. */
export const CHANNEL_QUANTITIES: Readonly<Record<CurveChannel, Quantity>> = {
  timeS: 'time',
  forceN: 'force',
  stressMPa: 'stress',
  displacementMm: 'length',
  extensionMm: 'length',
  strain: 'strain',
  torqueNm: 'torque',
  angleDeg: 'angle',
  temperatureC: 'temperature',
};

/** Spellings that only headings of curve files use (English and German). */
const HEADING_SPELLINGS: Readonly<Record<string, Unit>> = {
  '-': 'mm/mm',
  '1': 'mm/mm',
  sek: 's',
  sekunden: 's',
  cel: '°C',
  grad: '°',
  umdr: 'rev',
};

/** The unit that a heading means, or null when the text is no unit of that quantity. */
export function findHeadingUnit(text: string, quantity: Quantity): Unit | null {
  const special = HEADING_SPELLINGS[text.trim().toLowerCase()];
  if (special !== undefined) return isUnit(special, quantity) ? special : null;
  return text.trim() === '' ? null : findUnit(text, quantity);
}

/** Whether a text is a unit of anything that a curve file may hold; used to tell a line of units from a line of names. */
export function isHeadingUnit(text: string): boolean {
  return Object.values(CHANNEL_QUANTITIES).some((quantity) => findHeadingUnit(text, quantity) !== null);
}

/** channel value = written value · factor + shift; the channel's unit is the one in its name. */
export interface Conversion {
  readonly factor: number;
  readonly shift: number;
}

/**
 * @throws {InvalidInput} when the unit is unknown to libs/units
 */
export function conversionOf(channel: CurveChannel, unit: Unit): Conversion {
  const shift = toChannel(channel, unit, 0);
  return { factor: toChannel(channel, unit, 1) - shift, shift };
}

/** Time is kept in minutes elsewhere; within a curve it is in seconds. */
function toChannel(channel: CurveChannel, unit: Unit, value: number): number {
  if (channel === 'timeS') return unit === 's' ? value : fromInternal(toInternal(value, unit), 's');
  return toInternal(value, unit);
}
