import { refuseIfAny } from '#libs/errors/src/index.js';
import type { Curve } from './curve.js';
import { checkCurveFormat } from './check-curve-format.js';
import type { CurveFormat, FormatDoubt } from './curve-format.js';
import { READER_LIMITS } from './curve-reading.js';
import type { CurveReading, ProblemReason, ReaderLimits } from './curve-reading.js';
import { decodeText, detectEncoding, looksLikeText } from './decode-text.js';
import { GrowingColumns } from './growing-columns.js';
import { locateByFormat, locateByProposal } from './locate-rows.js';
import type { RowsLocated } from './locate-rows.js';
import { RowParser } from './parse-row.js';
import { ProblemList } from './problem-list.js';
import { HEAD_BYTES } from './propose-format.js';
import { LineSplitter, lineEndOf } from './split-lines.js';

/** Reads one curve file, chunk by chunk. */
export interface CurveReader {
  /** Takes the next bytes, cut anywhere. After a refusal further bytes are ignored. */
  push(chunk: Uint8Array): void;
  /** True once the file cannot be taken any more, so that the sender may stop. */
  readonly isRefused: boolean;
  /** Ends the file. */
  end(): CurveReading;
}

export interface CurveReaderOptions {
  /** The format that a person confirmed for this source; without it the file must leave no blocking doubt. */
  readonly format?: CurveFormat;
  readonly limits?: Partial<ReaderLimits>;
}

/**
 * A reader for one file. It refuses as an outcome that names lines and reasons, and never gives a part of a curve.
 * It keeps the rows as numbers only: the caller keeps the original bytes.
 *
 * @throws {InvalidInput} when the format itself is wrong (a unit that does not fit, two columns for one channel)
 */
export function createCurveReader(options: CurveReaderOptions = {}): CurveReader {
  if (options.format) refuseIfAny(checkCurveFormat(options.format));
  return new StreamingReader(options.format ?? null, { ...READER_LIMITS, ...options.limits });
}

/** First of the rows without an extension. */
interface StrainEnd {
  readonly row: number;
  readonly line: number;
  readonly column: number;
  readonly found: string;
}

/** Fewer rows without an extension at the end of a file are a file that was cut off. */
const FEWEST_WITHOUT_STRAIN = 3;
/** After so many problems the rest of a file is not looked at. */
const ENOUGH_PROBLEMS = 1000;
const SHOWN_CHARACTERS = 60;
const LAST_LINE_NOT_ENDED: FormatDoubt = { code: 'last-line-not-ended', blocking: false, column: null, found: '' };

class StreamingReader implements CurveReader {
  isRefused = false;
  private head: Uint8Array[] = [];
  private headLength = 0;
  private byteCount = 0;
  private located: Extract<RowsLocated, { state: 'located' }> | null = null;
  private doubts: readonly FormatDoubt[] = [];
  private lines: LineSplitter | null = null;
  private parser: RowParser | null = null;
  private columns: GrowingColumns | null = null;
  private utf16: TextDecoder | null = null;
  /** Where the cells of the extensometer became empty; null while they are not. */
  private strainEnd: StrainEnd | null = null;
  private readonly problems: ProblemList;

  constructor(
    private readonly known: CurveFormat | null,
    private readonly limits: ReaderLimits,
  ) {
    this.problems = new ProblemList(limits.maxProblemsNamed);
  }

  push(chunk: Uint8Array): void {
    if (this.isRefused) return;
    this.byteCount += chunk.length;
    if (this.byteCount > this.limits.maxBytes) return this.stop('file-too-large', null, `${this.byteCount} bytes`);
    if (this.lines) return this.feed(chunk);
    this.head.push(chunk.slice());
    this.headLength += chunk.length;
    if (this.headLength >= HEAD_BYTES) this.start(false);
  }

  end(): CurveReading {
    if (!this.isRefused && !this.lines) this.start(true);
    if (!this.isRefused) this.finish();
    if (this.problems.count > 0 || !this.located || !this.columns) return this.refusal();
    return this.reading(this.located, this.columns);
  }

  /** Settles the format from the head, then feeds the head like any other bytes. */
  private start(isWhole: boolean): void {
    const head = joined(this.head, this.headLength);
    this.head = [];
    if (head.length === 0) return this.stop('empty-file', null, '');
    const encoding = detectEncoding(head);
    const isUtf16 = encoding.startsWith('utf-16');
    if (!isUtf16 && !looksLikeText(head)) return this.stop('not-text', null, '');
    const located = this.known
      ? locateByFormat(head, isWhole, this.known, this.limits)
      : locateByProposal(head, isWhole);
    this.doubts = located.doubts;
    if (located.state === 'not-located') return this.stop(located.reason, null, '');
    if (located.format.columns.length > this.limits.maxColumns) {
      return this.stop('too-many-columns', located.firstRowLine, `${located.format.columns.length} columns`);
    }
    this.open(located, isUtf16 ? 10 : lineEndOf(head));
    if (isUtf16) this.utf16 = new TextDecoder(encoding);
    this.feed(head);
  }

  private open(located: Extract<RowsLocated, { state: 'located' }>, lineEnd: number): void {
    this.located = located;
    this.parser = new RowParser(located.format);
    this.columns = new GrowingColumns(this.parser.row.length);
    const take = this.takeLine.bind(this, located.firstRowLine, this.parser, this.columns);
    const refuseLong = (line: number) =>
      this.stop('line-too-long', line, `more than ${this.limits.maxLineBytes} bytes`);
    this.lines = new LineSplitter(take, refuseLong, this.limits.maxLineBytes, lineEnd);
  }

  private feed(bytes: Uint8Array): void {
    this.lines!.push(this.utf16 ? new TextEncoder().encode(this.utf16.decode(bytes, { stream: true })) : bytes);
  }

  private finish(): void {
    if (!this.lines!.finish()) this.doubts = [...this.doubts, LAST_LINE_NOT_ENDED];
    const { strainEnd } = this;
    if (strainEnd && (strainEnd.row === 0 || this.columns!.rowCount - strainEnd.row < FEWEST_WITHOUT_STRAIN))
      this.refuseEmptyCell(strainEnd);
    if (this.columns!.rowCount < 2 && this.problems.count === 0)
      this.stop('no-rows', null, `${this.columns!.rowCount} rows`);
  }

  private takeLine(
    firstRowLine: number,
    parser: RowParser,
    columns: GrowingColumns,
    bytes: Uint8Array,
    start: number,
    end: number,
    line: number,
  ): void {
    if (line < firstRowLine || this.isRefused || isBlank(bytes, start, end)) return;
    if (!parser.parse(bytes, start, end)) return this.refuseRow(parser, bytes, start, end, line);
    if (this.problems.count > 0) return;
    if (columns.rowCount >= this.limits.maxRows)
      return this.stop('too-many-rows', line, `more than ${this.limits.maxRows} rows`);
    this.watchStrain(parser, columns.rowCount, line, bytes, start, end);
    columns.add(parser.row);
  }

  /** Cells of the extensometer may be empty from some row on to the end, and nowhere else. */
  private watchStrain(
    { emptyColumn }: RowParser,
    row: number,
    line: number,
    bytes: Uint8Array,
    start: number,
    end: number,
  ): void {
    if (emptyColumn < 0 && this.strainEnd) this.refuseEmptyCell(this.strainEnd);
    if (emptyColumn < 0 || this.strainEnd) return;
    this.strainEnd = { row, line, column: emptyColumn + 1, found: shownOf(bytes, start, end) };
  }

  private refuseEmptyCell({ line, column, found }: StrainEnd): void {
    this.problems.add('empty-cell', line, column, found);
    this.strainEnd = null;
  }

  private refuseRow(
    { problem, problemColumn }: RowParser,
    bytes: Uint8Array,
    start: number,
    end: number,
    line: number,
  ): void {
    const shown = shownOf(bytes, start, end);
    const isHeading =
      this.located!.headingLine !== null &&
      shown.trim().startsWith(this.located!.headingLine.slice(0, SHOWN_CHARACTERS));
    this.problems.add(isHeading ? 'headings-repeated' : problem, line, problemColumn + 1, shown);
    if (this.problems.count >= ENOUGH_PROBLEMS) this.isRefused = true;
  }

  private stop(reason: ProblemReason, line: number | null, found: string): void {
    this.problems.add(reason, line, null, found);
    this.isRefused = true;
    this.columns = null;
    this.head = [];
  }

  private refusal(): CurveReading {
    this.columns = null;
    return { state: 'refused', problems: this.problems.named, problemCount: this.problems.count, doubts: this.doubts };
  }

  private reading(
    { format, preamble, firstRowLine }: Extract<RowsLocated, { state: 'located' }>,
    columns: GrowingColumns,
  ): CurveReading {
    const channels = format.columns.flatMap(({ channel, unit }) => (channel && unit ? [channel] : []));
    const values = columns.finish();
    const named = Object.fromEntries(channels.map((channel, at) => [channel, values[at]!]));
    const strainRows = this.strainEnd?.row;
    if (strainRows !== undefined) values.forEach((column) => holdLast(column, strainRows));
    const curve: Curve = {
      pointCount: columns.rowCount,
      ...named,
      ...(strainRows === undefined ? {} : { strainRows }),
    };
    return {
      state: 'read',
      curve,
      format,
      preamble,
      confirmed: this.known !== null,
      doubts: this.doubts,
      firstRowLine,
      byteCount: this.byteCount,
    };
  }
}

function shownOf(bytes: Uint8Array, start: number, end: number): string {
  return decodeText(bytes.subarray(start, Math.min(end, start + 4 * SHOWN_CHARACTERS)), 'utf-8');
}

/** Where a column has no values any more its last one stands, so that every figure of a curve is a number. */
function holdLast(column: Float64Array, from: number): void {
  for (let at = from; at < column.length; at++) if (Number.isNaN(column[at]!)) column[at] = column[at - 1]!;
}

function joined(chunks: readonly Uint8Array[], length: number): Uint8Array {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function isBlank(bytes: Uint8Array, start: number, end: number): boolean {
  for (let at = start; at < end; at++) {
    const byte = bytes[at]!;
    if (byte !== 32 && byte !== 9) return false;
  }
  return true;
}
