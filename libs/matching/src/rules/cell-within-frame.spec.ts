import { labWith, outcomeOf } from '#test/support/matching/sample-lab.js';

describe('cell-within-frame', () => {
  it.each([
    [5001, 'pass'],
    [5000, 'pass'],
    [4999, 'fail'],
  ])('a 5000 N cell in a frame of %p N: %s', (tensionCapacityN, outcome) => {
    expect(outcomeOf('cell-within-frame', { lab: labWith('F', {}, { tensionCapacityN }) })).toBe(outcome);
  });

  it('has nothing to say of a frame that cannot load this way', () => {
    expect(outcomeOf('cell-within-frame', { lab: labWith('F', {}, { tensionCapacityN: 0 }) })).toBe('pass');
  });
});
