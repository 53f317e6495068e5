import type { ItemField } from '#libs/matching/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import type { DecimalMark } from '#libs/units/src/index.js';

/** What a cell says, or why it cannot be read. */
export type Cell = { value: unknown } | { reason: string };

/** How a list is written in one cell; comma and semicolon are taken by the file itself. */
const BETWEEN = '|';

/** A spreadsheet would run a cell that begins so; a mark before it makes it text, and goes when the file comes back. */
const FORMULA = /^'*[=+\-@\t\r]/;

export const safe = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

export const unsafe = (text: string): string => {
  const rest = text.slice(1);
  return text.startsWith("'") && FORMULA.test(rest) ? rest : text;
};

/** Writes a value of an item into one cell. Numbers stand as they are, with a point. */
export function writeCell(type: ItemField['type'], value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string') return safe(value);
  if (typeof value === 'number') return String(value);
  switch (type) {
    case 'flag':
      return value ? 'yes' : 'no';
    case 'choices':
    case 'numbers':
      return (value as unknown[]).join(BETWEEN);
    case 'rating-curve':
    case 'channels':
    case 'speed-limits':
      return (value as Record<string, unknown>[])
        .map((row) => Object.values(inOrder(type, row)).join(':'))
        .join(BETWEEN);
    default:
      return '';
  }
}

/** Reads a cell that holds something, its mark against formulas taken off. */
export function readCell(type: ItemField['type'], text: string, mark: DecimalMark): Cell {
  switch (type) {
    case 'number':
      return figure(text, mark);
    case 'flag':
      return flag(text);
    case 'choices':
      return { value: text.split(BETWEEN).map((each) => each.trim()) };
    case 'numbers':
      return all(text.split(BETWEEN).map((each) => figure(each, mark)));
    case 'rating-curve':
    case 'channels':
    case 'speed-limits':
      return all(text.split(BETWEEN).map((each) => pair(type, each, mark)));
    default:
      return { value: text.trim() };
  }
}

const PARTS = {
  'rating-curve': ['temperatureC', 'rating'],
  channels: ['kind', 'count'],
  'speed-limits': ['aboveForceN', 'speedMaxMmPerMin'],
} as const;

function inOrder(type: keyof typeof PARTS, row: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(PARTS[type].map((key) => [key, row[key]]));
}

function pair(type: keyof typeof PARTS, text: string, mark: DecimalMark): Cell {
  const [first = '', second = '', ...more] = text.split(':').map((each) => each.trim());
  const [left, right] = PARTS[type];
  if (!second || more.length > 0) return { reason: `"${text}" is not of the form ${left}:${right}.` };
  const before = type === 'channels' ? { value: first } : figure(first, mark);
  const after = figure(second, mark);
  if ('reason' in before) return before;
  return 'reason' in after ? after : { value: { [left]: before.value, [right]: after.value } };
}

function all(cells: readonly Cell[]): Cell {
  const wrong = cells.find((cell) => 'reason' in cell);
  return wrong ?? { value: cells.map((cell) => ('value' in cell ? cell.value : null)) };
}

function figure(text: string, mark: DecimalMark): Cell {
  return parseNumber(text, mark);
}

const YES = ['yes', 'true', '1'];
const NO = ['no', 'false', '0'];

function flag(text: string): Cell {
  const said = text.trim().toLowerCase();
  if (YES.includes(said)) return { value: true };
  return NO.includes(said) ? { value: false } : { reason: `"${text}" is neither yes nor no.` };
}
