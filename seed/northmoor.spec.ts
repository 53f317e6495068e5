import { checkItem } from '#libs/matching/src/index.js';
import { ITEMS } from './northmoor/items.js';

const count = (kind: string) => ITEMS.filter((item) => item.kind === kind).length;

describe('the demo lab', () => {
  it('has the size of a believable lab', () => {
    expect(count('frame')).toBe(9);
    expect(count('load-cell')).toBeGreaterThanOrEqual(20);
    expect(count('grip')).toBeGreaterThanOrEqual(50);
    expect(count('adapter')).toBeGreaterThanOrEqual(20);
    expect(count('extensometer')).toBeGreaterThanOrEqual(6);
  });

  it('gives every item a tag of its own', () => {
    expect(new Set(ITEMS.map(({ tag }) => tag)).size).toBe(ITEMS.length);
  });

  it.each(ITEMS.map((item) => [item.tag, item] as const))('registers %s without a wrong field', (_tag, item) => {
    const { serialNumber, intervalMonths, ...registered } = item;
    expect(serialNumber.length).toBeGreaterThan(3);
    expect(intervalMonths ?? 12).toBe(12);
    expect(checkItem({ ...registered, state: 'in-service' })).toEqual([]);
  });
});
