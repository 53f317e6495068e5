import type { Quantity } from '#libs/units/src/index.js';
import { CHANNEL_QUANTITIES, findHeadingUnit } from './channel-units.js';
import type { CurveChannel } from './curve.js';
import type { CurveColumn } from './curve-format.js';

/** Columns that look like a channel and are another thing: derived, across the load, or commanded. */
const NOT_READ = /\btrue\b|\bwahre?\b|transvers|lateral|quer|set ?point|sollwert|command|cycle|zyklus|count/i;

/** Words of headings, English and German, in the order in which they are tried (common practice, no source). */
const WORDS: readonly (readonly [CurveChannel, RegExp])[] = [
  ['timeS', /\btime\b|zeit|^t$|elapsed/i],
  ['temperatureC', /temp/i],
  ['torqueNm', /torque|moment/i],
  ['angleDeg', /angle|winkel|twist|rotation|verdreh/i],
  ['stressMPa', /stress|spannung|sigma|σ/i],
  ['strain', /strain|dehnung|stauchung|epsilon|ε/i],
  ['forceN', /force|\bload\b|kraft|^f$|^last$|prüflast/i],
  ['extensionMm', /extens|elongation|verlängerung|längenänderung|^[δΔ]l$/i],
  ['displacementMm', /displacement|crosshead|position|stroke|travel|traverse|weg\b|deflection|durchbiegung/i],
];

/** Strain and extension share words: the unit tells which is meant. */
const OTHER_READING: Partial<Record<CurveChannel, CurveChannel>> = {
  strain: 'extensionMm',
  extensionMm: 'strain',
  displacementMm: 'strain',
};

/** What a heading says; `unitText` is the text that stands where a unit is expected, if any. */
export interface HeadingReading extends CurveColumn {
  readonly unitText: string;
}

/**
 * Reads one heading such as `Force [kN]`, `Kraft in N`, `extension_mm` or `Dehnung (%)`.
 *
 * @param unitBelow what stands in the line of units under it, or an empty text
 */
export function readHeading(heading: string, unitBelow: string): HeadingReading {
  const plain = heading.replace(/_/g, ' ').replace(/\s+/g, ' ').trim();
  const { name, unitText } = unitBelow ? { name: plain, unitText: withoutBrackets(unitBelow) } : splitUnit(plain);
  const channel = NOT_READ.test(plain) ? null : (WORDS.find(([, word]) => word.test(name))?.[0] ?? null);
  return { heading, unitText, ...(channel ? fitUnit(channel, unitText) : { channel: null, unit: null }) };
}

function fitUnit(channel: CurveChannel, unitText: string): Pick<CurveColumn, 'channel' | 'unit'> {
  const unit = findHeadingUnit(unitText, quantityOf(channel));
  const other = OTHER_READING[channel];
  if (unit !== null || other === undefined) return { channel, unit };
  const otherUnit = findHeadingUnit(unitText, quantityOf(other));
  return otherUnit === null ? { channel, unit: null } : { channel: other, unit: otherUnit };
}

function quantityOf(channel: CurveChannel): Quantity {
  return CHANNEL_QUANTITIES[channel];
}

function withoutBrackets(text: string): string {
  return text.trim().replace(/^[[(<]\s*(.*?)\s*[\])>]$/, '$1');
}

function splitUnit(plain: string): { name: string; unitText: string } {
  const bracketed = /^(.*?)\s*[[(<]\s*([^\])>]*?)\s*[\])>]$/.exec(plain);
  const worded = /^(.*?)(?:\s+in\s+|\s*\/\s+|\s+\/|,\s+)(\S+)$/i.exec(plain);
  const match = bracketed ?? worded ?? lastWordAsUnit(plain);
  return match ? { name: match[1]!, unitText: match[2]! } : { name: plain, unitText: '' };
}

function lastWordAsUnit(plain: string): RegExpExecArray | null {
  const match = /^(.*)\s(\S+)$/.exec(plain);
  const isUnit =
    match && Object.values(CHANNEL_QUANTITIES).some((quantity) => findHeadingUnit(match[2]!, quantity) !== null);
  return isUnit ? match : null;
}
