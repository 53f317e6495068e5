import { ratingAt } from '../register/rating-at.js';
import { labWith, needsFor, outcomeOf, verdictOn } from '#test/support/matching/sample-lab.js';

const tension = (rating: number) => ({ ratings: { tension: [{ temperatureC: 23, rating }] } });

describe('weakest-link', () => {
  it.each(['G', 'J', 'A1', 'A2'])('holds %s to 2400 N for 2000 N and 20 %%', (id) => {
    expect(outcomeOf('weakest-link', { lab: labWith(id, tension(2401)) })).toBe('pass');
    expect(outcomeOf('weakest-link', { lab: labWith(id, tension(2400)) })).toBe('pass');
    expect(outcomeOf('weakest-link', { lab: labWith(id, tension(2399)) })).toBe('fail');
  });

  it('names the link that governs', () => {
    const lab = labWith('A2', tension(2000), {}, labWith('G', tension(2300)));
    expect(verdictOn('weakest-link', { lab }).items).toEqual(['A2']);
  });

  it('refuses an item that is not made for the direction', () => {
    const lab = labWith('G', { ratings: { compression: [{ temperatureC: 23, rating: 1e6 }] } });
    expect(verdictOn('weakest-link', { lab }).reason).toBe('not-made-for');
  });

  it('takes the rating at the temperature of the test', () => {
    const curve = [
      { temperatureC: 20, rating: 4000 },
      { temperatureC: 120, rating: 2000 },
    ];
    const grip = { ratings: { tension: curve } };
    // Half way between 20 and 120 °C the rating is 3000 N.
    expect([0, 20, 70, 120, 150].map((at) => ratingAt(grip, 'tension', at))).toEqual([4000, 4000, 3000, 2000, 2000]);
    expect(ratingAt(grip, 'compression', 20)).toBe(0);
    expect([170, 170.1].map((at) => ratingAt(grip, 'tension', at))).toEqual([2000, 0]);
    const hot = { needs: needsFor({ temperatureC: 110 }), lab: labWith('G', grip) };
    expect(outcomeOf('weakest-link', hot)).toBe('fail');
  });

  it('does not take a rating of room temperature for one at 300 °C', () => {
    const verdict = verdictOn('weakest-link', {
      needs: needsFor({ temperatureC: 300 }),
      lab: labWith('G', tension(1e6)),
    });
    expect(verdict).toMatchObject({ outcome: 'fail', reason: 'not-rated-so-hot' });
    expect(verdict.sentence).toMatch(/carries at 300\s°C; its last rating is for 23\s°C/);
  });
});
