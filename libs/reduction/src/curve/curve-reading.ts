import type { Curve } from './curve.js';
import type { CurveFormat, FormatDoubt } from './curve-format.js';

/** Why a line, or a whole file, cannot be taken. */
export type ProblemReason =
  | 'empty-file'
  | 'not-text'
  | 'no-rows'
  | 'headings-not-found'
  | 'headings-repeated'
  | 'format-in-doubt'
  | 'too-few-columns'
  | 'too-many-columns'
  | 'empty-cell'
  | 'not-a-number'
  | 'number-out-of-range'
  | 'line-too-long'
  | 'file-too-large'
  | 'too-many-rows';

/** One thing wrong; `line` and `column` count from 1 and are null where the whole file is meant. */
export interface LineProblem {
  readonly line: number | null;
  readonly column: number | null;
  readonly reason: ProblemReason;
  /** The text that was found there, cut to 60 characters. */
  readonly found: string;
}

/** The whole curve, or a refusal that names the lines: there is nothing in between. */
export type CurveReading =
  | {
      readonly state: 'read';
      readonly curve: Curve;
      readonly format: CurveFormat;
      readonly preamble: readonly string[];
      /** True when the caller handed over a format that a person had confirmed. */
      readonly confirmed: boolean;
      readonly doubts: readonly FormatDoubt[];
      /** Number of the line, counted from 1, of the first row: row i of the curve stands near line firstRowLine + i. */
      readonly firstRowLine: number;
      readonly byteCount: number;
    }
  | {
      readonly state: 'refused';
      /** The first problems, at most `maxProblemsNamed`. */
      readonly problems: readonly LineProblem[];
      readonly problemCount: number;
      readonly doubts: readonly FormatDoubt[];
    };

/** Bounds that keep a hostile or mistaken file harmless. */
export interface ReaderLimits {
  readonly maxBytes: number;
  readonly maxRows: number;
  readonly maxColumns: number;
  readonly maxLineBytes: number;
  readonly maxHeaderLines: number;
  readonly maxProblemsNamed: number;
}

export const READER_LIMITS: ReaderLimits = {
  maxBytes: 2 ** 31,
  maxRows: 20_000_000,
  maxColumns: 64,
  maxLineBytes: 65_536,
  maxHeaderLines: 500,
  maxProblemsNamed: 20,
};
