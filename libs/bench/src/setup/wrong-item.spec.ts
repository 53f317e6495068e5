import { wrongItem } from './wrong-item.js';
import type { WrongItem } from './wrong-item.js';

const wrong = (over: Partial<WrongItem> = {}) =>
  wrongItem({ item: { tag: 'LC-9', name: 'Cell 9' }, expected: ['LC-1', 'GP-1'], inUseBy: null, places: [], ...over });
const place = { itemId: 'cell', tag: 'LC-1', problems: [], isEqual: false };
const problem = { rule: 'cell-capacity', items: ['x'], sentence: 'LC-9 is too small.' };

describe('an item that is not the one', () => {
  it('has no place in the train', () => {
    expect(wrong()).toEqual({
      code: 'bench/wrong-item',
      sentence: 'LC-9 (Cell 9) has no place in this train. Wanted is LC-1 or GP-1.',
      facts: { found: 'LC-9', allowed: ['LC-1', 'GP-1'] },
    });
    expect(wrong({ expected: [] }).sentence).toMatch(/Wanted is nothing more\.$/);
  });

  it('is in use by another job', () => {
    expect(wrong({ inUseBy: 'J-8-1', places: [place] }).facts).toMatchObject({ inUseBy: 'J-8-1' });
  });

  it('breaks rules in the place where it breaks fewest', () => {
    const found = wrong({
      places: [
        { ...place, problems: [problem, problem] },
        { ...place, problems: [problem] },
      ],
    });
    expect([found.facts['rules'], found.sentence]).toEqual([
      ['cell-capacity'],
      expect.stringContaining('cannot take the place of LC-1: LC-9 is too small.'),
    ]);
  });

  it('may stand in when it is an equal unit, and not when it merely breaks no rule', () => {
    expect(wrong({ places: [{ ...place, isEqual: true }] }).facts).toMatchObject({ standInFor: 'cell' });
    expect(wrong({ places: [place] }).sentence).toContain('not equal to LC-1');
  });
});
