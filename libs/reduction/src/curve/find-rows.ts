import type { DecimalMark, Delimiter } from './curve-format.js';
import { isNumberField, splitWhole } from './split-fields.js';

/** Tried in this order; the first of equals wins. */
const DELIMITERS: readonly Delimiter[] = ['tab', 'semicolon', 'pipe', 'comma', 'space'];
const DECIMAL_MARKS: readonly DecimalMark[] = ['point', 'comma'];

/** How the rows of a text are written, and where they start. */
export interface RowLayout {
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
  /** Index of the line of the first row. */
  readonly firstRow: number;
  /** One letter per column: N for numbers, T for text. */
  readonly pattern: string;
}

/**
 * Finds the delimiter and decimal mark under which most lines look alike and hold at least two numbers.
 * Columns of text count against a layout, since a wrong delimiter makes text out of numbers.
 *
 * @returns null when no line holds two numbers
 */
export function findRows(lines: readonly string[]): RowLayout | null {
  let best: RowLayout | null = null;
  let bestScore = 0;
  for (const delimiter of DELIMITERS) {
    for (const decimalMark of DECIMAL_MARKS) {
      const found = layoutWith(lines, delimiter, decimalMark);
      if (found === null || found.score <= bestScore) continue;
      best = found.layout;
      bestScore = found.score;
    }
  }
  return best;
}

function layoutWith(
  lines: readonly string[],
  delimiter: Delimiter,
  decimalMark: DecimalMark,
): { layout: RowLayout; score: number } | null {
  const patterns = lines.map((line) => patternOf(line, delimiter, decimalMark));
  const [pattern, rows] = mostFrequent(patterns) ?? [];
  if (pattern === undefined || rows === undefined) return null;
  const alike = patterns.map((each) => numbersIn(each) >= 2 && isAlike(each, pattern));
  const whole = merged(patterns.filter((_, line) => alike[line]));
  const score = rows * (numbersIn(whole) / whole.length) ** 2;
  return { layout: { delimiter, decimalMark, firstRow: alike.indexOf(true), pattern: whole }, score };
}

/** An empty cell says nothing of its column: sizes may stand in the first row only, an extensometer is taken off before the end. */
function isAlike(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (long.length > short.length + 1 || (long.length > short.length && !long.endsWith('E'))) return false;
  return [...short].every((letter, at) => letter === long[at] || letter === 'E' || long[at] === 'E');
}

/** A column with numbers in some rows holds numbers; one after a last delimiter, empty throughout, is none. */
function merged(patterns: readonly string[]): string {
  const columns = Math.max(...patterns.map(({ length }) => length));
  const holds = (letter: string, at: number) => patterns.some((each) => each[at] === letter);
  const letters = Array.from({ length: columns }, (_, at) => (holds('N', at) ? 'N' : holds('T', at) ? 'T' : 'E')).join(
    '',
  );
  return letters.replace(/E$/, '').replaceAll('E', 'T');
}

function patternOf(line: string, delimiter: Delimiter, decimalMark: DecimalMark): string {
  return splitWhole(line, delimiter)
    .map((field) => (field.trim() === '' ? 'E' : isNumberField(field, decimalMark) ? 'N' : 'T'))
    .join('');
}

function numbersIn(pattern: string): number {
  return pattern.length - pattern.replaceAll('N', '').length;
}

/** The pattern of most lines among those with at least two numbers, and how many lines have it. */
function mostFrequent(patterns: readonly string[]): [string, number] | null {
  const counts = new Map<string, number>();
  for (const pattern of patterns) counts.set(pattern, (counts.get(pattern) ?? 0) + 1);
  const rows = [...counts].filter(([pattern]) => numbersIn(pattern) >= 2);
  return rows.reduce<[string, number] | null>((best, each) => (best && best[1] >= each[1] ? best : each), null);
}
