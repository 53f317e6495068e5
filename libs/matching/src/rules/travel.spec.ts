import { labWith, needsFor, outcomeOf } from '#test/support/matching/sample-lab.js';

describe('travel', () => {
  it.each([
    [6, 'pass'],
    [5, 'pass'],
    [4.9, 'fail'],
  ])('5 mm asked of a stroke of %p mm: %s', (travelMm, outcome) => {
    expect(outcomeOf('travel', { lab: labWith('F', {}, { travelMm }) })).toBe(outcome);
  });

  // Strain at break 0.5 where nobody knows better, over a parallel length of 80 mm; marked as assumed.
  it('is estimated from the strain at break when nobody says it', () => {
    const needs = needsFor({ travelMm: null });
    expect([needs.travel.value, needs.travel.assumed]).toEqual([40, true]);
    expect(needs.toConfirm).toContain('travel');
    expect(needsFor({ travelMm: null, confirmed: ['travel'] }).toConfirm).not.toContain('travel');
  });
});
