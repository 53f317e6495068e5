import fc from 'fast-check';
import type { CurveFormat } from './curve-format.js';
import { RowParser } from './parse-row.js';

const column = (channel: 'forceN' | 'timeS' | null, unit: 'N' | 's' | 'kN' | null) => ({ heading: '', channel, unit });
const parserFor = (change: Partial<CurveFormat> = {}) =>
  new RowParser({
    delimiter: 'semicolon',
    decimalMark: 'point',
    columns: [column('forceN', 'N'), column(null, null), column('timeS', 's')],
    ...change,
  });

function parse(parser: RowParser, line: string): number[] | string {
  const bytes = new TextEncoder().encode(`xx${line}yy`);
  return parser.parse(bytes, 2, bytes.length - 2) ? [...parser.row] : `${parser.problem} ${parser.problemColumn + 1}`;
}

describe('RowParser', () => {
  it.each([
    ['1;x;2', [1, 2]],
    [' -1.5 ; "a;b" ; +2.25e-3 ', [-1.5, 0.00225]],
    ['"1.5";;".5"', [1.5, 0.5]],
    ['1.;;5;', [1, 5]],
    ['0.1;;1e22', [0.1, 1e22]],
    ['123456789012345678;;0.1234567890123456789', [Number('123456789012345678'), Number('0.1234567890123456789')]],
    ['1e23;;4.9e-324', [1e23, 5e-324]],
    ['00000000000000000000001.5;;-0', [1.5, 0]],
  ])('reads %s as the language itself would', (line, expected) => {
    expect(parse(parserFor(), line)).toEqual(expected);
  });

  it.each([
    ['1;x', 'too-few-columns 3'],
    ['1;x;2;3', 'too-many-columns 4'],
    [';x;2', 'empty-cell 1'],
    ['1;x;', 'too-few-columns 3'],
    ['1;x;2.5.1', 'not-a-number 3'],
    ['1,5;x;2', 'not-a-number 1'],
    ['1 000;x;2', 'not-a-number 1'],
    ['"1;x;2', 'not-a-number 1'],
    ['1e;x;2', 'not-a-number 1'],
    ['1e400;x;2', 'number-out-of-range 1'],
  ])('refuses %s: %s', (line, problem) => {
    expect(parse(parserFor(), line)).toBe(problem);
  });

  it('reads any number as the language itself would', () => {
    const parser = parserFor({ columns: [column('forceN', 'N'), column('timeS', 's')] });
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(25), (value, digits) => {
        for (const text of [String(value), value.toExponential(Math.min(digits, 20)), value.toFixed(digits)]) {
          const expected = Number(text) + 0;
          expect(parse(parser, `${text};1`)).toEqual(
            Number.isFinite(expected) ? [expected, 1] : 'number-out-of-range 1',
          );
        }
      }),
    );
  });

  it('reads decimal commas and converts to the unit of the channel', () => {
    const parser = parserFor({ decimalMark: 'comma', columns: [column('forceN', 'kN'), column('timeS', 's')] });
    expect(parse(parser, '1,2345;7')).toEqual([1234.5, 7]);
  });

  it('refuses a number that runs over in the unit of the channel', () => {
    expect(parse(parserFor({ columns: [column('forceN', 'kN'), column('timeS', 's')] }), '1e307;1')).toBe(
      'number-out-of-range 1',
    );
  });

  it('takes any run of blanks as one delimiter', () => {
    const parser = parserFor({ delimiter: 'space', columns: [column('forceN', 'N'), column('timeS', 's')] });
    expect(parse(parser, ' \t 1.5 \t\t 2 ')).toEqual([1.5, 2]);
    expect(parse(parser, '1.5 2 3')).toBe('too-many-columns 3');
  });
});
