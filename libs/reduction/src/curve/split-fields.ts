import type { DecimalMark, Delimiter } from './curve-format.js';

/** Byte of each delimiter; `space` stands for any run of spaces and tabs. */
export const DELIMITER_BYTES: Readonly<Record<Delimiter, number>> = {
  tab: 9,
  semicolon: 59,
  comma: 44,
  pipe: 124,
  space: 32,
};

/**
 * The fields of one line, trimmed and without quotes. One empty field after a last delimiter is left out, since
 * many exporters end each line with one.
 */
export function splitFields(line: string, delimiter: Delimiter): string[] {
  const fields = splitWhole(line, delimiter);
  if (fields.length > 1 && fields.at(-1) === '') fields.pop();
  return fields;
}

/** The same with the empty field after a last delimiter. */
export function splitWhole(line: string, delimiter: Delimiter): string[] {
  const parts = delimiter === 'space' ? line.trim().split(/[ \t]+/) : splitQuoted(line, DELIMITER_BYTES[delimiter]);
  return parts.map((part) => unquoted(part.trim()));
}

function splitQuoted(line: string, delimiterCode: number): string[] {
  const parts: string[] = [];
  let start = 0;
  let quoted = false;
  for (let at = 0; at < line.length; at++) {
    const code = line.charCodeAt(at);
    if (code === 34) quoted = !quoted;
    if (code !== delimiterCode || quoted) continue;
    parts.push(line.slice(start, at));
    start = at + 1;
  }
  parts.push(line.slice(start));
  return parts;
}

function unquoted(field: string): string {
  return field.length > 1 && field.startsWith('"') && field.endsWith('"') ? field.slice(1, -1).trim() : field;
}

const NUMBER_WITH: Readonly<Record<DecimalMark, RegExp>> = {
  point: /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i,
  comma: /^[+-]?(?:\d+(?:,\d*)?|,\d+)(?:e[+-]?\d+)?$/i,
};

/** Whether a field is a plain number with that decimal mark (no thousands marks). */
export function isNumberField(field: string, decimalMark: DecimalMark): boolean {
  return NUMBER_WITH[decimalMark].test(field);
}
