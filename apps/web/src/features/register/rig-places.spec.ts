import { fromTheTop, placeProblems, usualPlace } from './rig-places.js';

describe('the places of a rig', () => {
  it('lists what hangs from the crosshead down, and a strange place last', () => {
    const links = ['shelf', 'extensometer', 'lower', 'load-cell', 'upper'].map((role) => ({ role }));
    expect(fromTheTop(links).map(({ role }) => role)).toEqual(['load-cell', 'upper', 'lower', 'extensometer', 'shelf']);
  });

  it('offers an item the first free place of its kind', () => {
    expect(usualPlace('adapter', [])).toBe('upper-adapter');
    expect(usualPlace('adapter', ['upper-adapter'])).toBe('lower-adapter');
    expect(usualPlace('load-cell', ['load-cell'])).toBe('load-cell');
  });

  it('says at the second of two that the place is taken', () => {
    const [first, second] = placeProblems([{ role: 'faces' }, { role: 'faces' }]);
    expect([first, second]).toEqual([undefined, 'Something else is in this place already.']);
  });
});
