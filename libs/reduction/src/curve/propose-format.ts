import type { CurveFormat, FormatDoubt, FormatProposal, TextEncoding } from './curve-format.js';
import { isHeadingUnit } from './channel-units.js';
import { doubtsAbout } from './doubts-about.js';
import { decodeText, detectEncoding } from './decode-text.js';
import { findRows } from './find-rows.js';
import type { RowLayout } from './find-rows.js';
import { readHeading } from './read-heading.js';
import type { HeadingReading } from './read-heading.js';
import { splitFields } from './split-fields.js';

/** Bytes from the start of a file that the proposal rests on. */
export const HEAD_BYTES = 65_536;

const MOST_LINES = 1000;
/** No row or heading of a curve file is as long; such a line is not looked at for the format. */
const MOST_CHARACTERS = 4096;
const PREAMBLE_LINES = 100;
const SAMPLE_ROWS = 5;

/**
 * What the first bytes of a file say about its format, to be shown to a person and confirmed.
 *
 * @param head the first bytes, as many as `HEAD_BYTES`, or the whole file
 * @param isWhole true when nothing follows `head`; otherwise its last line is left out, since it may be cut
 * @returns null when no line holds two numbers
 */
export function proposeFormat(head: Uint8Array, isWhole: boolean): FormatProposal | null {
  const encoding = detectEncoding(head);
  const lines = headLines(decodeText(head, encoding), isWhole);
  const layout = findRows(lines);
  return layout ? proposalFor(lines, layout, encoding) : null;
}

/** The lines of a head of text, at most 1000, without a cut last one; a line beyond all length is left empty. */
export function headLines(text: string, isWhole: boolean): string[] {
  const lines = text.split(/\r\n|\n|\r/);
  if (!isWhole && lines.length > 1) lines.pop();
  return lines.slice(0, MOST_LINES).map((line) => (line.length > MOST_CHARACTERS ? '' : line));
}

function proposalFor(lines: readonly string[], layout: RowLayout, encoding: TextEncoding): FormatProposal {
  const { delimiter, decimalMark, firstRow, pattern } = layout;
  const headings = findHeadings(lines, layout);
  const columns = [...pattern].map((letter, at) => columnFor(headings, at, letter));
  const format: CurveFormat = {
    encoding,
    delimiter,
    decimalMark,
    headerLines: firstRow,
    hasHeadings: headings.names !== null,
    hasUnitLine: headings.units !== null,
    columns: columns.map(({ heading, channel, unit }) => ({ heading, channel, unit })),
  };
  const rows = lines.slice(firstRow).filter((line) => line.trim() !== '');
  const doubts: FormatDoubt[] = [
    ...headings.doubts,
    ...doubtsAbout(columns),
    ...(rows.some((line) => line.includes(decimalMark === 'point' ? '.' : ',')) ? [] : [MARK_NOT_SEEN]),
  ];
  return {
    format: { ...format, columns: withoutRepeats(format.columns) },
    doubts,
    preamble: lines.slice(0, Math.min(firstRow, PREAMBLE_LINES)),
    sample: rows.slice(0, SAMPLE_ROWS).map((line) => splitFields(line, delimiter)),
  };
}

const MARK_NOT_SEEN: FormatDoubt = { code: 'decimal-mark-not-seen', blocking: false, column: null, found: '' };

interface Headings {
  readonly names: readonly string[] | null;
  readonly units: readonly string[] | null;
  readonly doubts: readonly FormatDoubt[];
}

/** The line of names is the last one above the rows, or the one above a line of units. */
function findHeadings(lines: readonly string[], layout: RowLayout): Headings {
  const above = lines.slice(0, layout.firstRow).filter((line) => line.trim() !== '');
  const [upper, lower] = [above.at(-2), above.at(-1)].map((line) => headingFields(line ?? '', layout));
  if (above.length === 0 || !hasLetters(lower!)) return noHeadings('no-headings', '');
  if (lower!.length !== layout.pattern.length) return noHeadings('heading-count-differs', above.at(-1)!.slice(0, 60));
  const isUnitLine =
    above.length > 1 && upper!.length === lower!.length && hasLetters(upper!) && lower!.every(isUnitCell);
  return isUnitLine ? { names: upper!, units: lower!, doubts: [] } : { names: lower!, units: null, doubts: [] };
}

function noHeadings(code: FormatDoubt['code'], found: string): Headings {
  return { names: null, units: null, doubts: [{ code, blocking: true, column: null, found }] };
}

/** Fields of a line of headings; a leading mark of a comment does not belong to the first. */
export function headingFields(line: string, { delimiter }: Pick<CurveFormat, 'delimiter'>): string[] {
  return splitFields(line.replace(/^\uFEFF?\s*[#%]\s*/, '').replace(/^\uFEFF/, ''), delimiter);
}

function hasLetters(fields: readonly string[]): boolean {
  return fields.some((field) => /\p{L}/u.test(field));
}

function isUnitCell(cell: string): boolean {
  const bare = cell.replace(/^[[(<]\s*(.*?)\s*[\])>]$/, '$1');
  return bare === '' || isHeadingUnit(bare);
}

function columnFor(headings: Headings, at: number, letter: string): HeadingReading {
  const heading = headings.names?.[at] ?? '';
  const read = readHeading(heading, headings.units?.[at] ?? '');
  if (letter === 'T') return { ...read, channel: null, unit: null };
  const isBareStrain = read.channel === 'strain' && read.unit === null && read.unitText === '';
  return isBareStrain ? { ...read, unit: 'mm/mm' } : read;
}

/** Of two columns for one channel the first is read. */
function withoutRepeats(columns: CurveFormat['columns']): CurveFormat['columns'] {
  return columns.map((column, at) => {
    const isRepeat = column.channel !== null && columns.findIndex(({ channel }) => channel === column.channel) < at;
    return isRepeat ? { ...column, channel: null, unit: null } : column;
  });
}
