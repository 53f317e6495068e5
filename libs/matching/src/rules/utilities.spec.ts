import { labWith, verdictOn } from '#test/support/matching/sample-lab.js';

describe('utilities', () => {
  it('finds compressed air for the grips at the frame', () => {
    expect(verdictOn('utilities').outcome).toBe('pass');
  });

  it('names what is missing and where', () => {
    const { outcome, required, items } = verdictOn('utilities', {
      lab: labWith('G', { utilities: ['compressed-air', 'hydraulics'] }),
    });
    expect({ outcome, required, items }).toEqual({ outcome: 'fail', required: 'hydraulics', items: ['G', 'F'] });
  });
});
