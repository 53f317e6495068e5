import type { CurveFormat } from './curve-format.js';
import type { ProblemReason } from './curve-reading.js';
import { conversionOf } from './channel-units.js';
import { DELIMITER_BYTES } from './split-fields.js';

const [TAB, SPACE, QUOTE, PLUS, MINUS, ZERO, NINE, BIG_E, SMALL_E] = [9, 32, 34, 43, 45, 48, 57, 69, 101] as const;

/** Powers of ten that a double holds exactly: within them one multiplication or division rounds correctly. */
const EXACT_POWERS = Array.from({ length: 23 }, (_, power) => 10 ** power);
/** Digits that a whole number below 2⁵³ may have at most. */
const SAFE_DIGITS = 15;

/**
 * Reads rows of numbers straight from bytes, without making text of them.
 * After a refused row `problem` and `problemColumn` (from 0) say why.
 */
export class RowParser {
  /** The values of the columns that are read, in the channel's units, in the order of `read`. */
  readonly row: Float64Array;
  problem: ProblemReason = 'not-a-number';
  problemColumn = 0;
  /** Column (from 0) of the row's first empty cell of an extensometer, whose value is NaN then; -1 where there is none. */
  emptyColumn = -1;

  private readonly delimiter: number;
  private readonly decimal: number;
  private readonly bySpace: boolean;
  private readonly columnCount: number;
  /** Per column of the file the place in `row`, or -1. */
  private readonly places: Int32Array;
  /** Per column whether its cells may be empty: an extensometer is taken off before the specimen breaks. */
  private readonly mayBeEmpty: readonly boolean[];
  private readonly factors: Float64Array;
  private readonly shifts: Float64Array;
  private at = 0;
  private value = 0;

  constructor({ delimiter, decimalMark, columns }: Pick<CurveFormat, 'delimiter' | 'decimalMark' | 'columns'>) {
    this.delimiter = DELIMITER_BYTES[delimiter];
    this.bySpace = delimiter === 'space';
    this.decimal = decimalMark === 'point' ? 46 : 44;
    this.columnCount = columns.length;
    this.places = Int32Array.from(columns, () => -1);
    this.mayBeEmpty = columns.map(({ channel }) => channel === 'extensionMm' || channel === 'strain');
    const read = columns.flatMap(({ channel, unit }, at) =>
      channel && unit ? [{ at, ...conversionOf(channel, unit) }] : [],
    );
    read.forEach(({ at }, place) => (this.places[at] = place));
    this.factors = Float64Array.from(read, ({ factor }) => factor);
    this.shifts = Float64Array.from(read, ({ shift }) => shift);
    this.row = new Float64Array(read.length);
  }

  /** Reads bytes[start, end), one line without its end; true when `row` holds it. */
  parse(bytes: Uint8Array, start: number, end: number): boolean {
    this.at = start;
    this.emptyColumn = -1;
    for (let column = 0; column < this.columnCount; column++) {
      this.skipSpaces(bytes, end);
      const place = this.places[column]!;
      const isEmpty = column > 0 && (this.at >= end || (!this.bySpace && bytes[this.at] === this.delimiter));
      if (isEmpty && place >= 0 && this.mayBeEmpty[column]) this.leaveEmpty(place, column);
      else if (this.at >= end && column > 0 && place >= 0) return this.refuse('too-few-columns', column);
      else if (place < 0) this.skipField(bytes, end);
      else if (!this.readField(bytes, end)) return this.refuse(this.problem, column);
      else if (!this.keep(place)) return this.refuse('number-out-of-range', column);
      if (!this.stepOver(bytes, end, column)) return false;
    }
    return true;
  }

  /** Puts the number into the row, in the channel's unit. */
  private keep(place: number): boolean {
    const value = this.value * this.factors[place]! + this.shifts[place]!;
    this.row[place] = value;
    return Number.isFinite(value);
  }

  private leaveEmpty(place: number, column: number): void {
    this.row[place] = NaN;
    if (this.emptyColumn < 0) this.emptyColumn = column;
  }

  private refuse(reason: ProblemReason, column: number): boolean {
    this.problem = reason;
    this.problemColumn = column;
    return false;
  }

  /** After a field: the delimiter, or the end of the line after the last column. */
  private stepOver(bytes: Uint8Array, end: number, column: number): boolean {
    const isLast = column === this.columnCount - 1;
    if (this.at >= end) return isLast || this.mayBeEmpty[column + 1]! || this.refuse('too-few-columns', column + 1);
    if (!this.bySpace) this.at++;
    if (!isLast) return true;
    this.skipSpaces(bytes, end);
    return this.at >= end || this.refuse('too-many-columns', column + 1);
  }

  private skipSpaces(bytes: Uint8Array, end: number): void {
    while (this.at < end && this.isSpace(bytes[this.at]!)) this.at++;
  }

  private isSpace(byte: number): boolean {
    return byte === SPACE || (byte === TAB && this.delimiter !== TAB);
  }

  private endsField(byte: number): boolean {
    return byte === this.delimiter || (this.bySpace && byte === TAB);
  }

  private skipField(bytes: Uint8Array, end: number): void {
    let quoted = false;
    while (this.at < end && (quoted || !this.endsField(bytes[this.at]!))) {
      if (bytes[this.at++] === QUOTE) quoted = !quoted;
    }
  }

  /** A number, perhaps in quotes, up to the next delimiter. */
  private readField(bytes: Uint8Array, end: number): boolean {
    const quoted = this.at < end && bytes[this.at] === QUOTE;
    if (quoted) this.at++;
    if (!this.readNumber(bytes, end)) return false;
    if (quoted && bytes[this.at++] !== QUOTE) return false;
    if (!this.bySpace) this.skipSpaces(bytes, end);
    this.problem = 'not-a-number';
    return this.at >= end || this.endsField(bytes[this.at]!);
  }

  private readNumber(bytes: Uint8Array, end: number): boolean {
    const start = this.at;
    let at = start;
    const sign = bytes[at]!;
    if (at < end && (sign === MINUS || sign === PLUS)) at++;
    let mantissa = 0;
    let digits = 0;
    let seen = 0;
    let afterMark = -1;
    for (; at < end; at++) {
      const byte = bytes[at]!;
      if (byte >= ZERO && byte <= NINE) {
        seen++;
        if (afterMark >= 0) afterMark++;
        if (digits > 0 || byte !== ZERO) digits++;
        mantissa = mantissa * 10 + (byte - ZERO);
      } else if (byte === this.decimal && afterMark < 0) afterMark = 0;
      else break;
    }
    this.at = at;
    if (seen === 0) return this.notANumber(bytes, start, end);
    let power = afterMark > 0 ? -afterMark : 0;
    const next = at < end ? bytes[at]! : 0;
    if (next === SMALL_E || next === BIG_E) {
      const exponent = this.readExponent(bytes, end);
      if (exponent === null) return this.notANumber(bytes, start, end);
      power += exponent;
    }
    const isExact = digits <= SAFE_DIGITS && power >= -22 && power <= 22;
    const size = isExact ? scaled(mantissa, power) : this.roundedByText(bytes, start);
    this.value = isExact && sign === MINUS ? -size : size;
    return true;
  }

  /** Reads `e-3` and steps past it. */
  private readExponent(bytes: Uint8Array, end: number): number | null {
    let at = this.at + 1;
    const sign = at < end ? bytes[at]! : 0;
    if (sign === MINUS || sign === PLUS) at++;
    const first = at;
    let exponent = 0;
    for (; at < end && bytes[at]! >= ZERO && bytes[at]! <= NINE; at++)
      exponent = Math.min(exponent * 10 + (bytes[at]! - ZERO), 9999);
    this.at = at;
    if (at === first) return null;
    return sign === MINUS ? -exponent : exponent;
  }

  /** More digits than a double holds: the engine's own conversion rounds correctly, only slower. */
  private roundedByText(bytes: Uint8Array, start: number): number {
    let text = '';
    for (let at = start; at < this.at; at++) text += bytes[at] === this.decimal ? '.' : String.fromCharCode(bytes[at]!);
    return Number(text);
  }

  private notANumber(bytes: Uint8Array, start: number, end: number): boolean {
    this.problem = start >= end || this.endsField(bytes[start]!) ? 'empty-cell' : 'not-a-number';
    return false;
  }
}

function scaled(mantissa: number, power: number): number {
  return power < 0 ? mantissa / EXACT_POWERS[-power]! : mantissa * EXACT_POWERS[power]!;
}
