import { DAY_MS, labWith, PERIOD, verdictOn } from '#test/support/matching/sample-lab.js';

const told = (id: string, change: Parameters<typeof labWith>[1]) => {
  const { outcome, reason, items } = verdictOn('frame-state', { lab: labWith(id, change) });
  return outcome === 'pass' ? outcome : `${reason} ${items.join()}`;
};

describe('frame-state', () => {
  it.each(['F', 'C', 'G', 'J', 'A1', 'X'])('refuses %s with an open fault', (id) => {
    expect(told(id, { state: 'faulty' })).toBe(`faulty ${id}`);
    expect(told(id, { state: 'out-of-use' })).toBe(`out-of-use ${id}`);
  });

  it('refuses what is promised elsewhere all the time, not what is so for a part of it', () => {
    expect(told('G', { heldWindows: [PERIOD] })).toBe('held G');
    expect(told('G', { heldWindows: [{ startMs: PERIOD.startMs, endMs: PERIOD.endMs - DAY_MS }] })).toBe('pass');
  });
});
