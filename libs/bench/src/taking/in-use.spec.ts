import { inUse } from './in-use.js';

const held = [
  { id: 'a', reference: 'J-1', frameId: 'frame-1', train: [{ itemId: 'cell-1' }], fitted: ['cell-1', 'guard-1'] },
  { id: 'b', reference: 'J-2', frameId: null, train: [{ itemId: 'cell-2' }], fitted: [] },
];

describe('what is in use', () => {
  it('is each frame at work, its train, and whatever else hangs on it', () => {
    expect([...inUse(held)]).toEqual([
      ['frame-1', 'J-1'],
      ['cell-1', 'J-1'],
      ['guard-1', 'J-1'],
      ['cell-2', 'J-2'],
    ]);
  });

  it('does not keep a job from what it holds itself', () => {
    expect([...inUse(held, 'a').keys()]).toEqual(['cell-2']);
  });
});
