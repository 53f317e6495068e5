import { labWith, needsFor, outcomeOf, verdictOn } from '#test/support/matching/sample-lab.js';

const withCapacity = (tensionCapacityN: number) => labWith('F', {}, { tensionCapacityN });

describe('frame-capacity', () => {
  // 2000 N with 20 % margin are 2400 N.
  it.each([
    [2401, 'pass'],
    [2400, 'pass'],
    [2399, 'fail'],
  ])('a frame of %p N for 2000 N and 20 %%: %s', (capacityN, outcome) => {
    expect(outcomeOf('frame-capacity', { lab: withCapacity(capacityN) })).toBe(outcome);
  });

  it('takes the margin of the lab', () => {
    expect(outcomeOf('frame-capacity', { lab: withCapacity(2000), settings: { forceMargin: 0 } })).toBe('pass');
  });

  it('judges the direction of the test alone', () => {
    expect(outcomeOf('frame-capacity', { lab: labWith('F', {}, { compressionCapacityN: 0 }) })).toBe('pass');
  });

  it('says so when the frame cannot load that way at all', () => {
    const { outcome, reason, sentence } = verdictOn('frame-capacity', { lab: withCapacity(0) });
    expect([outcome, reason]).toEqual(['fail', 'frame-cannot-load']);
    expect(sentence).toBe('F cannot load in this direction. Choose another frame.');
  });

  it('tells found, allowed and what to do', () => {
    const { required, available, margin, unit, sentence } = verdictOn('frame-capacity', {
      lab: withCapacity(2000),
      needs: needsFor(),
    });
    expect({ required, available, margin, unit }).toEqual({ required: 2400, available: 2000, margin: -400, unit: 'N' });
    expect(sentence.replaceAll('\u00a0', ' ')).toBe(
      'Needs 2400 N with margin; F carries 2000 N: 400 N short. Choose a larger frame or lower the peak.',
    );
  });
});
