export type DecimalMark = '.' | ',';

/** How a text reads as a number, or why it does not. */
export type ParsedNumber = { value: number } | { reason: string };

/**
 * Reads a number as people write it: `12.5`, `12,5`, `12 500`, `1.234,5`, `2e5`, `−3`.
 *
 * A single mark before exactly three digits (`1,234`) may be a decimal mark or a thousands mark; it is refused unless
 * the person's decimal mark is known, because guessing would be wrong by a factor of a thousand half of the time.
 *
 * @param decimalMark the mark that the writer uses, where known; then the other mark can only group thousands
 */
export function parseNumber(text: string, decimalMark?: DecimalMark): ParsedNumber {
  const [, sign = '', digits = '', exponent = ''] = NUMBER.exec(tidy(text)) ?? [];
  if (!/\d/.test(digits)) return { reason: `"${text.trim()}" is not a number.` };
  const mark = decimalMark ?? decimalMarkOf(digits);
  if (mark === 'either') return { reason: ambiguous(digits) };
  const plain = withoutGroups(digits, mark);
  if (plain === null) return { reason: `"${text.trim()}" has misplaced marks.` };
  const value = Number(`${sign}${plain}${exponent}`);
  return Number.isFinite(value) ? { value } : { reason: `"${text.trim()}" is too large.` };
}

/**
 * The decimal mark that a person uses, as their other figures show it.
 *
 * @param texts what was typed into one form
 * @returns null where no figure shows one, or they differ
 */
export function decimalMarkIn(texts: readonly string[]): DecimalMark | null {
  const marks = new Set<DecimalMark>();
  for (const text of texts) {
    const [, , digits = ''] = NUMBER.exec(tidy(text)) ?? [];
    const mark = /[.,]/.test(digits) ? decimalMarkOf(digits) : 'either';
    if (mark !== 'either' && digits.split(mark).length === 2) marks.add(mark);
  }
  const [mark = null] = marks;
  return marks.size === 1 ? mark : null;
}

/**
 * The mark by which a figure that can be read in two ways comes to about what is expected; the two are a thousandfold apart.
 *
 * @param near what is expected, above 0
 */
export function decimalMarkNear(text: string, near: number): DecimalMark {
  const off = (mark: DecimalMark) => {
    const number = parseNumber(text, mark);
    return 'reason' in number ? Infinity : Math.abs(Math.log(Math.abs(number.value) / near));
  };
  return off('.') <= off(',') ? '.' : ',';
}

/** What helps to read a figure such as `2.005`, which can be read in two ways: about what it comes to, or how its writer writes others. */
export interface Hint {
  near?: number | null;
  mark?: DecimalMark | null;
}

/** Reads a number as {@link parseNumber} does; where that would ask back, by the hint. */
export function parseHinted(text: string, { near, mark }: Hint): ParsedNumber {
  const plain = parseNumber(text);
  const known = near ? decimalMarkNear(text, near) : mark;
  return 'reason' in plain && known ? parseNumber(text, known) : plain;
}

const NUMBER = /^([+-]?)([\d., ']+?)(e[+-]?\d{1,3})?$/i;

function tidy(text: string): string {
  return text
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u2019]/g, "'")
    .replace(/\s/g, ' ');
}

/** Which mark is the decimal one, judged by the digits alone. */
function decimalMarkOf(digits: string): DecimalMark | 'either' {
  const marks = digits.replace(/[^.,]/g, '');
  const last = marks.at(-1) as DecimalMark | undefined;
  if (last === undefined) return '.';
  const other = last === '.' ? ',' : '.';
  if (marks.includes(other)) return last;
  if (marks.length > 1) return other;
  return /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits) ? 'either' : last;
}

/** Digits with `.` as the decimal mark and no grouping, or null when groups are not of three digits. */
function withoutGroups(digits: string, mark: DecimalMark): string | null {
  const [whole = '', fraction = '', ...more] = digits.split(mark);
  const group = mark === '.' ? ',' : '.';
  if (more.length > 0 || /[^\d]/.test(fraction)) return null;
  const groups = whole.split(/[ ']/.test(whole) ? /[ ']/ : group);
  if (groups.some((part) => /[^\d]/.test(part))) return null;
  if (groups.length > 1 && !groupsFit(groups)) return null;
  return `${groups.join('') || '0'}.${fraction || '0'}`;
}

function groupsFit([first = '', ...rest]: string[]): boolean {
  return first.length >= 1 && first.length <= 3 && rest.every((part) => part.length === 3);
}

function ambiguous(digits: string): string {
  const plain = digits.replace(/[.,]/, '');
  const decimal = digits.replace(',', '.');
  return `"${digits}" can mean ${plain} or ${decimal}. Write ${plain}, or ${decimal}0 with one more digit.`;
}
