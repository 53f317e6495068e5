import { asText, readPath, withPath } from './paths.js';

const ITEM = Object.freeze({
  massKg: 3.4,
  details: Object.freeze({ ends: Object.freeze([{ sizeMm: 15 }, { sizeMm: 30 }]) }),
});

describe('paths into an item', () => {
  it('lead to a value, through lists as well', () => {
    expect(readPath(ITEM, 'details.ends.1.sizeMm')).toBe(30);
    expect(readPath(ITEM, 'details.coupling.sizeMm')).toBeUndefined();
  });

  it('set a value in a copy and leave the rest as it was', () => {
    const changed = withPath(ITEM, 'details.ends.0.sizeMm', 6);
    expect(readPath(changed, 'details.ends.0.sizeMm')).toBe(6);
    expect(readPath(changed, 'details.ends.1.sizeMm')).toBe(30);
    expect(readPath(ITEM, 'details.ends.0.sizeMm')).toBe(15);
  });

  it('make the lists and groups that are not there yet', () => {
    expect(withPath<Record<string, unknown>>({}, 'details.ends.0.sizeMm', 6)).toEqual({
      details: { ends: [{ sizeMm: 6 }] },
    });
  });

  it('show plain values as text and nothing else', () => {
    expect([asText(4), asText('a'), asText(true), asText(null), asText({})]).toEqual(['4', 'a', 'true', '', '']);
  });
});
