import type { Unit } from '#libs/units/src/index.js';
import type { CurveChannel } from './curve.js';

export type TextEncoding = 'utf-8' | 'windows-1252' | 'utf-16le' | 'utf-16be';
export type Delimiter = 'tab' | 'semicolon' | 'comma' | 'pipe' | 'space';
export type DecimalMark = 'point' | 'comma';

/** One column of a curve file; `channel` is null for a column that is not read, `unit` is the one that it is written in. */
export interface CurveColumn {
  readonly heading: string;
  readonly channel: CurveChannel | null;
  readonly unit: Unit | null;
}

/**
 * How the files of one source are written: confirmed once by a person, then remembered for the next file.
 * Plain data, safe to keep as JSON.
 */
export interface CurveFormat {
  readonly encoding: TextEncoding;
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
  /** Lines before the first row; only used where the file has no headings to find the rows by. */
  readonly headerLines: number;
  /** True when the line of headings is how the start of the rows is found in the next file. */
  readonly hasHeadings: boolean;
  /** True when a line of units stands between the headings and the rows. */
  readonly hasUnitLine: boolean;
  /** One entry per column of the file, in its order. */
  readonly columns: readonly CurveColumn[];
}

/** What could not be settled from the file alone; a blocking doubt needs a person before the file is read. */
export interface FormatDoubt {
  readonly code:
    | 'no-headings'
    | 'heading-count-differs'
    | 'no-load-column'
    | 'no-second-column'
    | 'unit-unknown'
    | 'unit-does-not-fit'
    | 'column-not-recognised'
    | 'channel-twice'
    | 'strain-taken-as-fraction'
    | 'decimal-mark-not-seen'
    | 'last-line-not-ended';
  readonly blocking: boolean;
  /** Number of the column, counted from 1, where the doubt is about one. */
  readonly column: number | null;
  readonly found: string;
}

/** What the reader believes about a file, to be shown and confirmed. */
export interface FormatProposal {
  readonly format: CurveFormat;
  readonly doubts: readonly FormatDoubt[];
  /** Lines above the rows, as written (at most 100). */
  readonly preamble: readonly string[];
  /** The first rows (at most 5), as text per column. */
  readonly sample: readonly (readonly string[])[];
}
