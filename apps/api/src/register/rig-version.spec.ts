import { rigVersion } from './rig-version.js';

const CELL = { itemId: '0b9b7a52-0000-4000-8000-000000000001', role: 'load-cell' };
const GRIP = { itemId: '0b9b7a52-0000-4000-8000-000000000002', role: 'upper-grip' };

describe('the version of what is on a frame', () => {
  it('is the same in whatever order the links are read', () => {
    expect(rigVersion([CELL, GRIP])).toBe(rigVersion([GRIP, CELL]));
  });

  it('is another one when something comes on, comes off or changes its place', () => {
    const versions = [[], [CELL], [CELL, GRIP], [CELL, { ...GRIP, role: 'lower-grip' }]].map(rigVersion);
    expect(new Set(versions).size).toBe(versions.length);
  });
});
