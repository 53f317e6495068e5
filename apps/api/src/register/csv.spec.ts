import type { ItemField } from '#libs/matching/src/index.js';
import { readCell, unsafe, writeCell } from '../exchange/csv-cell.js';
import { readItemsCsv } from './read-items-csv.js';

describe('a cell of the register’s file', () => {
  const values: [ItemField['type'], unknown][] = [
    ['text', 'Wedge, 5 kN'],
    ['text', '=1+1'],
    ['text', '@home'],
    ['text', "'=1+1"],
    ['text', "'tis"],
    ['number', -40.5],
    ['flag', true],
    ['flag', false],
    ['choices', ['flat', 'round']],
    ['numbers', [25, 50.8]],
    [
      'rating-curve',
      [
        { temperatureC: -40, rating: 4000 },
        { temperatureC: 23, rating: 5000 },
      ],
    ],
    ['channels', [{ kind: 'force', count: 2 }]],
    ['speed-limits', [{ aboveForceN: 50_000, speedMaxMmPerMin: 250 }]],
  ];

  it.each(values)('gives a %s back as it went in: %p', (type, value) => {
    expect(readCell(type, unsafe(writeCell(type, value)), '.')).toEqual({ value });
  });

  it.each(['=SUM(A1)', '+1', '-1', '@a', '\tx'])('never begins a formula with %p', (text) => {
    expect(writeCell('text', text)).toBe(`'${text}`);
  });

  it.each<[ItemField['type'], string]>([
    ['number', 'much'],
    ['flag', 'perhaps'],
    ['rating-curve', '23'],
    ['rating-curve', '23:5000:1'],
    ['channels', 'force:many'],
  ])('says why a %s cannot be read from %p', (type, text) => {
    expect(readCell(type, text, '.')).toEqual({ reason: expect.any(String) });
  });
});

describe('a file of items', () => {
  it('is read with semicolons and decimal commas as well', () => {
    const { items, problems } = readItemsCsv('\uFEFFkind;tag;massKg\nadapter;AD-1;0,35\n');
    expect(problems).toEqual([]);
    expect(items[0]).toMatchObject({ kind: 'adapter', tag: 'AD-1', line: 2 });
    expect(items[0]!.said.get('massKg')).toBe(0.35);
  });

  it('names the line, the column and what is wrong, all at once', () => {
    const { problems } = readItemsCsv('kind,tag,massKg\nspoon,S-1,1\nadapter,,1\nadapter,AD-1,heavy\nadapter,AD-1,1\n');
    expect(problems.map(({ line, field }) => [line, field])).toEqual([
      [2, 'kind'],
      [3, 'tag'],
      [4, 'massKg'],
      [5, 'tag'],
    ]);
  });

  it('refuses columns that are strange, missing or there twice', () => {
    const { problems } = readItemsCsv('tag,colour,massKg,massKg\nA,red,1,1');
    expect(problems.map(({ field }) => field)).toEqual(['kind', 'colour', 'massKg']);
  });

  it('says that a line has too few cells', () => {
    expect(readItemsCsv('kind,tag,massKg\ngrip,G-1').problems).toEqual([expect.objectContaining({ line: 2 })]);
  });
});
