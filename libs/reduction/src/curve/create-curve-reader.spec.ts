import { createCurveReader } from './create-curve-reader.js';
import type { CurveFormat } from './curve-format.js';
import type { ReaderLimits } from './curve-reading.js';

const text = (rows: number) =>
  `Time [s],Force [N]\n${Array.from({ length: rows }, (_, row) => `${row},${row * 2}\n`).join('')}`;

function read(content: string, limits: Partial<ReaderLimits> = {}) {
  const reader = createCurveReader({ limits });
  reader.push(new TextEncoder().encode(content));
  return { reading: reader.end(), reader };
}

describe('createCurveReader', () => {
  it('keeps every row of a file that is longer than a segment of its columns', () => {
    const { reading } = read(text(70_000));
    expect(reading).toMatchObject({ state: 'read', curve: { pointCount: 70_000 }, firstRowLine: 2 });
    if (reading.state === 'read')
      expect([reading.curve.forceN![65_535], reading.curve.forceN![65_536], reading.curve.forceN![69_999]]).toEqual([
        131_070, 131_072, 139_998,
      ]);
  });

  it.each<[string, Partial<ReaderLimits>, number, string]>([
    ['rows', { maxRows: 5 }, 5, 'too-many-rows'],
    ['bytes', { maxBytes: text(5).length }, 5, 'file-too-large'],
    ['columns', { maxColumns: 2 }, 5, 'too-many-columns'],
  ])('holds its limit of %s exactly', (_, limits, rows, reason) => {
    expect(read(text(rows), limits).reading.state).toBe('read');
    const over = reason === 'too-many-columns' ? text(rows).replace(/\n/g, ',1\n').replace(',1', ',x') : text(rows + 1);
    expect(read(over, limits).reading).toMatchObject({ state: 'refused', problems: [{ reason }] });
  });

  it('holds its limit of the length of a line, whether the line lies in one chunk or in many', () => {
    const long = `${text(3)}3,${'0'.repeat(90)}6\n`;
    for (const size of [1, 1000]) {
      const reader = createCurveReader({ limits: { maxLineBytes: 60 } });
      const bytes = new TextEncoder().encode(long);
      for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size));
      expect(reader.end()).toMatchObject({ state: 'refused', problems: [{ reason: 'line-too-long', line: 5 }] });
    }
  });

  it('says as soon as a file cannot be taken, and ignores what follows', () => {
    const { reader } = read(text(10), { maxBytes: 20 });
    expect(reader.isRefused).toBe(true);
    reader.push(new TextEncoder().encode(text(10)));
    expect(reader.end()).toMatchObject({ state: 'refused', problemCount: 1 });
  });

  it('refuses a confirmed format that is wrong, before any file', () => {
    const format: CurveFormat = {
      encoding: 'utf-8',
      delimiter: 'comma',
      decimalMark: 'comma',
      headerLines: 1,
      hasHeadings: false,
      hasUnitLine: false,
      columns: [
        { heading: '', channel: 'forceN', unit: 'mm' },
        { heading: '', channel: 'forceN', unit: 'N' },
      ],
    };
    expect(() => createCurveReader({ format })).toThrow(/columns\[0\]\.unit .*columns\[1\]\.channel /);
  });

  it('reads a file without headings by the number of lines that a person confirmed', () => {
    const format: CurveFormat = {
      encoding: 'utf-8',
      delimiter: 'comma',
      decimalMark: 'point',
      headerLines: 2,
      hasHeadings: false,
      hasUnitLine: false,
      columns: [
        { heading: '', channel: 'timeS', unit: 'ms' },
        { heading: '', channel: 'forceN', unit: 'N' },
      ],
    };
    const reader = createCurveReader({ format });
    reader.push(new TextEncoder().encode('7,7\n8,8\n500,1\n1500,2\n'));
    const reading = reader.end();
    expect(reading.state === 'read' && [...reading.curve.timeS!]).toEqual([0.5, 1.5]);
  });
});
