import { labWith, needsFor, verdictOn } from '#test/support/matching/sample-lab.js';

const bandOf = (high: number) => {
  const { outcome, reason } = verdictOn('cell-band', { needs: needsFor({ peak: { low: 100, high } }) });
  return outcome === 'pass' ? outcome : `${outcome} ${reason}`;
};

// The band of a 5000 N cell is 500 to 4000 N.
describe('cell-band', () => {
  it.each([
    [499, 'caution below-band'],
    [500, 'pass'],
    [4000, 'pass'],
    [4001, 'caution above-band'],
  ])('a peak of %p N: %s', (high, expected) => expect(bandOf(high)).toBe(expected));

  it('takes the shares of the lab', () => {
    const needs = needsFor({ peak: { low: 100, high: 300 } });
    expect(verdictOn('cell-band', { needs, settings: { cellBandLow: 0.05 }, lab: labWith('C', {}) }).outcome).toBe(
      'pass',
    );
  });
});
