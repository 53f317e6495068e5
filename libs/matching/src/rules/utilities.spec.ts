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

  it('names a voltage as a figure with its unit', () => {
    const { required } = verdictOn('utilities', { lab: labWith('G', { utilities: ['power-400v'] }) });
    expect(required).toBe('400 V power');
  });
});
