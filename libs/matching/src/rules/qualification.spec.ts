import { DAY_MS, PERIOD, SAMPLE_LAB, verdictOn } from '#test/support/matching/sample-lab.js';

const among = (...technicians: (typeof SAMPLE_LAB)['technicians']) =>
  verdictOn('qualification', { lab: { ...SAMPLE_LAB, technicians } });
const before = { startMs: PERIOD.startMs - DAY_MS, endMs: PERIOD.startMs };

describe('qualification', () => {
  it('wants one who may run the method and is on shift', () => {
    expect(among({ id: 'T', methodIds: ['iso-527-2'], windows: [PERIOD] }).outcome).toBe('pass');
    expect(among({ id: 'T', methodIds: ['iso-178'], windows: [PERIOD] }).reason).toBe('nobody-authorised');
    expect(among({ id: 'T', methodIds: ['iso-527-2'], windows: [before] }).reason).toBe('nobody-on-shift');
  });

  it('does not add one who may to another who is there', () => {
    const may = { id: 'A', methodIds: ['iso-527-2'], windows: [] };
    const isThere = { id: 'B', methodIds: [], windows: [PERIOD] };
    expect(among(may, isThere).outcome).toBe('fail');
  });
});
