import { createHash } from 'node:crypto';
import type { CurveFormat } from '#libs/reduction/src/index.js';

/**
 * By what a source of curve files is known again: layout, headings and units as they were found. Lines above the headings may
 * come and go (a name, a date); without headings their number is all there is.
 */
export function sourceFingerprint(found: CurveFormat): string {
  const { encoding, delimiter, decimalMark, hasHeadings, hasUnitLine, headerLines, columns } = found;
  const heads = columns.map(({ heading, unit }) => [heading.trim(), unit]);
  const layout = [encoding, delimiter, decimalMark, hasUnitLine, hasHeadings ? null : headerLines, heads];
  return createHash('sha256').update(JSON.stringify(layout)).digest('hex');
}
