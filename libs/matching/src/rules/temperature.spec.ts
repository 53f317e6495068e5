import type { Chamber, Item } from '../register/item.js';
import { labWith, needsFor, SAMPLE_LAB, SAMPLE_LINKS, verdictOn } from '#test/support/matching/sample-lab.js';

const chamber = (details: Partial<Chamber['details']>): Item => ({
  ...SAMPLE_LAB.items.find(({ id }) => id === 'J')!,
  kind: 'chamber',
  id: 'H',
  tag: 'H',
  details: {
    minC: -40,
    maxC: 120,
    insideWidthMm: 120,
    insideHeightMm: 120,
    fitsClearanceMinMm: 400,
    fitsClearanceMaxMm: 400,
    rampCPerMin: 3,
    soakBaseMin: 20,
    soakMinPerMm: 5,
    ...details,
  },
});
const hot = needsFor({ temperatureC: 80 });
const rated = ['G', 'J', 'A1', 'A2', 'X'].reduce(
  (lab, id) => labWith(id, { temperatureMaxC: 80 }, {}, lab),
  SAMPLE_LAB,
);
const told = (details: Partial<Chamber['details']>, lab = rated) => {
  const links = [...SAMPLE_LINKS, { role: 'chamber' as const, itemId: 'H' }];
  const { outcome, reason } = verdictOn('temperature', {
    lab: { ...lab, items: [...lab.items, chamber(details)] },
    needs: hot,
    links,
  });
  return outcome === 'fail' ? reason : outcome;
};

// 115 mm between the grips and 5 mm of travel.
describe('temperature', () => {
  it('asks for a chamber away from room temperature only', () => {
    expect(verdictOn('temperature').outcome).toBe('pass');
    expect(verdictOn('temperature', { needs: hot, lab: rated }).reason).toBe('no-chamber');
  });

  it.each([
    [{}, 'caution'],
    [{ maxC: 80 }, 'caution'],
    [{ maxC: 79 }, 'too-hot'],
    [{ insideWidthMm: 119 }, 'too-wide-for-chamber'],
    [{ insideHeightMm: 119 }, 'too-tall-for-chamber'],
    [{ fitsClearanceMaxMm: 399, fitsClearanceMinMm: 300 }, 'chamber-too-narrow'],
    [{ fitsClearanceMinMm: 401 }, 'chamber-too-wide'],
  ])('a chamber with %j: %s', (details, expected) => expect(told(details)).toBe(expected));

  it.each(['G', 'J', 'A1', 'X'])('refuses %s where it is not rated for the heat', (id) => {
    expect(told({}, labWith(id, { temperatureMaxC: 79 }, {}, rated))).toBe('item-too-hot');
  });

  it('lets the cell stay outside', () => {
    expect(told({}, labWith('C', { temperatureMaxC: 40 }, {}, rated))).toBe('caution');
  });
});
