import { fuzzApi } from '../fuzz/fuzz-api.js';

describe('every described operation, asked as everybody with valid, edge and hostile input', () => {
  it('never breaks, shows nothing of the inside or of other teams, and refuses with field and what is allowed', async () => {
    const { operations, calls, faults } = await fuzzApi({ seed: 1, rounds: 1, withinMs: 60_000 });
    expect(faults).toEqual([]);
    expect(operations).toBeGreaterThan(100);
    expect(calls).toBeGreaterThan(operations);
  }, 240_000);
});
