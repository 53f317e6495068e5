import { leftOnFrame } from './left-on-frame.js';

const rig = [
  { itemId: 'old-cell', role: 'load-cell' },
  { itemId: 'guard', role: 'guard' },
];
const train = [
  { itemId: 'cell', role: 'load-cell' },
  { itemId: 'grips', role: 'ends', confirmedAt: '10:00' },
];

describe('when work stops', () => {
  it('what was not taken off and what was confirmed hang on the frame', () => {
    expect(leftOnFrame({ train, checks: { 'off-old-cell': {} } }, rig)).toEqual([
      { itemId: 'guard', role: 'guard' },
      { itemId: 'grips', role: 'ends' },
    ]);
  });

  it('an item that stayed and was confirmed hangs there once', () => {
    const kept = [{ itemId: 'guard', role: 'guard', confirmedAt: '10:00' }];
    expect(leftOnFrame({ train: kept, checks: {} }, rig)).toEqual(rig);
  });
});
