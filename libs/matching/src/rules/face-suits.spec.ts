import { labWith, verdictOn } from '#test/support/matching/sample-lab.js';

const told = (details: Record<string, unknown>) => {
  const { outcome, reason } = verdictOn('face-suits', { lab: labWith('J', {}, details) });
  return outcome === 'pass' ? outcome : `${outcome} ${reason}`;
};

// common practice, no source: fine serrated or diamond faces hold rigid plastics, vee faces hold round ends.
describe('face-suits', () => {
  it.each([
    ['diamond', 'pass'],
    ['fine-serrated', 'pass'],
    ['smooth', 'caution surface'],
  ])('%s faces on a rigid plastic: %s', (surface, expected) => expect(told({ surface })).toBe(expected));

  it('cautions vee faces on flat ends', () => {
    expect(told({ shape: 'vee' })).toBe('caution face-shape');
  });
});
