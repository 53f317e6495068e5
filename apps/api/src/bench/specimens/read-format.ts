import { fieldProblem, refuseIfAny } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { checkCurveFormat } from '#libs/reduction/src/index.js';
import type { CurveColumn, CurveFormat } from '#libs/reduction/src/index.js';

const ENCODINGS = ['utf-8', 'windows-1252', 'utf-16le', 'utf-16be'];
const DELIMITERS = ['tab', 'semicolon', 'comma', 'pipe', 'space'];
const DECIMAL_MARKS = ['point', 'comma'];
const MOST_COLUMNS = 64;
const MOST_HEADER_LINES = 500;

/**
 * A format as a person confirmed it.
 *
 * @throws InvalidInput naming every part that is missing or wrong, below `format`
 */
export function readFormat(sent: Record<string, unknown>): CurveFormat {
  refuseOtherShape(sent);
  refuseIfAny(checkCurveFormat(sent).map((problem) => fieldProblem({ ...problem, field: `format.${problem.field}` })));
  return sent;
}

function refuseOtherShape(sent: object): asserts sent is CurveFormat {
  refuseIfAny(shapeProblems({ ...sent }));
}

function shapeProblems({
  encoding,
  delimiter,
  decimalMark,
  headerLines,
  hasHeadings,
  hasUnitLine,
  columns,
}: Record<string, unknown>): (FieldProblem | null)[] {
  return [
    oneOf('encoding', encoding, ENCODINGS),
    oneOf('delimiter', delimiter, DELIMITERS),
    oneOf('decimalMark', decimalMark, DECIMAL_MARKS),
    isLineCount(headerLines) ? null : wrong('headerLines', headerLines, `a whole number, 0 to ${MOST_HEADER_LINES}`),
    typeof hasHeadings === 'boolean' ? null : wrong('hasHeadings', hasHeadings, 'true or false'),
    typeof hasUnitLine === 'boolean' ? null : wrong('hasUnitLine', hasUnitLine, 'true or false'),
    ...columnsProblems(columns),
  ];
}

function isLineCount(value: unknown): boolean {
  return Number.isInteger(value) && (value as number) >= 0 && (value as number) <= MOST_HEADER_LINES;
}

function columnsProblems(columns: unknown): (FieldProblem | null)[] {
  if (!Array.isArray(columns) || columns.length === 0 || columns.length > MOST_COLUMNS) {
    return [wrong('columns', columns ?? null, `1 to ${MOST_COLUMNS} columns`)];
  }
  return columns.map((column: unknown, at) =>
    isColumn(column) ? null : wrong(`columns[${at}]`, column, 'heading, channel and unit, as text or null'),
  );
}

function isColumn(column: unknown): column is CurveColumn {
  if (typeof column !== 'object' || column === null) return false;
  const { heading, channel, unit } = column as Record<string, unknown>;
  return typeof heading === 'string' && [channel, unit].every((part) => part === null || typeof part === 'string');
}

function oneOf(field: string, found: unknown, allowed: readonly string[]): FieldProblem | null {
  return allowed.includes(found as string) ? null : wrong(field, found, `one of ${allowed.join(', ')}`);
}

function wrong(field: string, found: unknown, allowed: string): FieldProblem {
  return fieldProblem({ field: `format.${field}`, found, allowed, unit: '' });
}
