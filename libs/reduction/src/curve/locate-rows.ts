import type { CurveFormat, FormatDoubt } from './curve-format.js';
import type { ReaderLimits } from './curve-reading.js';
import { decodeText, detectEncoding } from './decode-text.js';
import { headLines, headingFields, proposeFormat } from './propose-format.js';

/** Where the rows of a file begin and how they are written; `firstRowLine` counts from 1. */
export type RowsLocated =
  | {
      readonly state: 'located';
      readonly format: CurveFormat;
      readonly firstRowLine: number;
      readonly headingLine: string | null;
      readonly preamble: readonly string[];
      readonly doubts: readonly FormatDoubt[];
    }
  | {
      readonly state: 'not-located';
      readonly reason: 'no-rows' | 'headings-not-found' | 'format-in-doubt';
      readonly doubts: readonly FormatDoubt[];
    };

/** Finds the rows by what the file itself says; any blocking doubt leaves it to a person. */
export function locateByProposal(head: Uint8Array, isWhole: boolean): RowsLocated {
  const proposal = proposeFormat(head, isWhole);
  if (proposal === null) return { state: 'not-located', reason: 'no-rows', doubts: [] };
  const { format, doubts, preamble } = proposal;
  if (doubts.some(({ blocking }) => blocking)) return { state: 'not-located', reason: 'format-in-doubt', doubts };
  return {
    state: 'located',
    format,
    doubts,
    preamble,
    firstRowLine: format.headerLines + 1,
    headingLine: headingText(preamble, format),
  };
}

function headingText(preamble: readonly string[], format: CurveFormat): string | null {
  return format.hasHeadings ? (preamble.at(format.hasUnitLine ? -2 : -1)?.trim() ?? null) : null;
}

const PREAMBLE_LINES = 100;

/** Finds the rows of a file whose format is known: below its headings, however many lines stand above them. */
export function locateByFormat(
  head: Uint8Array,
  isWhole: boolean,
  known: CurveFormat,
  { maxHeaderLines }: Pick<ReaderLimits, 'maxHeaderLines'>,
): RowsLocated {
  const encoding = detectEncoding(head);
  const format = { ...known, encoding };
  const lines = headLines(decodeText(head, encoding), isWhole);
  const headingAt = format.hasHeadings
    ? lines.slice(0, maxHeaderLines).findIndex((line) => isHeadingLine(line, format))
    : -1;
  if (format.hasHeadings && headingAt < 0) return { state: 'not-located', reason: 'headings-not-found', doubts: [] };
  const skipped = format.hasHeadings ? headingAt + 1 + (format.hasUnitLine ? 1 : 0) : format.headerLines;
  return {
    state: 'located',
    format: { ...format, headerLines: skipped },
    firstRowLine: skipped + 1,
    headingLine: headingAt < 0 ? null : lines[headingAt]!.trim(),
    preamble: lines.slice(0, Math.min(skipped, PREAMBLE_LINES)),
    doubts: [],
  };
}

function isHeadingLine(line: string, format: CurveFormat): boolean {
  const fields = headingFields(line, format);
  return fields.length === format.columns.length && fields.every((field, at) => field === format.columns[at]!.heading);
}
