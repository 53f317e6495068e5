import { cellOf, csvLines, jsonLines } from './export-lines.js';
import type { ExportedRow } from './export-lines.js';

async function* given(...rows: object[]): AsyncGenerator<ExportedRow> {
  await Promise.resolve();
  for (const row of rows) yield { table: 'item', line: JSON.stringify(row) };
}

async function whole(lines: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const line of lines) text += line;
  return text;
}

describe('an export', () => {
  it('as lines of JSON says of each row which table it is of', async () => {
    expect(await whole(jsonLines(given({ tag: 'LC-1', massKg: 0.5 })))).toBe(
      '{"table":"item","row":{"tag":"LC-1","massKg":0.5}}\n',
    );
  });

  it('as CSV has a header, keeps quotes and line ends in their cell, and leaves empty what is null', async () => {
    const text = await whole(
      csvLines(['tag', 'name', 'details'], given({ tag: 'A "1"', name: 'two\nlines', details: null })),
    );
    expect(text).toBe('tag,name,details\r\n"A ""1""","two\nlines",\r\n');
  });

  it('begins no formula', () => {
    expect(['=1+1', '+1', '-1', '@A1', '\tx', "'=1", -1, true, { a: 1 }].map(cellOf)).toEqual([
      ...["'=1+1", "'+1", "'-1", "'@A1", "'\tx", "''=1"],
      ...['-1', 'true', '{"a":1}'],
    ]);
  });
});
