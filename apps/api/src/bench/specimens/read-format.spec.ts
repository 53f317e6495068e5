import { InvalidInput } from '#libs/errors/src/index.js';
import { readFormat } from './read-format.js';

const FORMAT = Object.freeze({
  ...{
    encoding: 'utf-8',
    delimiter: 'comma',
    decimalMark: 'point',
    headerLines: 1,
    hasHeadings: true,
    hasUnitLine: false,
  },
  columns: [
    { heading: 'Force [N]', channel: 'forceN', unit: 'N' },
    { heading: 'note', channel: null, unit: null },
  ],
});

describe('a format as a person confirmed it', () => {
  it('is taken when it is whole', () => {
    expect(readFormat({ ...FORMAT })).toEqual(FORMAT);
  });

  it.each<[string, unknown, string]>([
    ['encoding', 'ebcdic', 'format.encoding'],
    ['delimiter', undefined, 'format.delimiter'],
    ['decimalMark', 7, 'format.decimalMark'],
    ['headerLines', -1, 'format.headerLines'],
    ['headerLines', 501, 'format.headerLines'],
    ['hasHeadings', 'yes', 'format.hasHeadings'],
    ['columns', [], 'format.columns'],
    ['columns', [null], 'format.columns[0]'],
    ['columns', [{ heading: 'F', channel: 'forceN', unit: 'mm' }], 'format.columns[0].unit'],
    ['columns', [{ heading: 't', channel: 'timeS', unit: 's' }], 'format.columns'],
  ])('is refused for %s %p at %s', (name, value, field) => {
    const wrong = () => readFormat({ ...FORMAT, [name]: value });
    expect(wrong).toThrow(InvalidInput);
    expect(wrong).toThrow(field);
  });
});
