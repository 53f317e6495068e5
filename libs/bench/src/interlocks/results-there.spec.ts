import { READY } from '#test/support/bench/ready.js';
import { resultsThere } from './results-there.js';

const judge = (lacks: typeof READY.lacks) => resultsThere.judge({ ...READY, lacks });

const lack = (key: string, why: string | null) => ({ key, label: key.toUpperCase(), why, hint: null });

describe('every result that was asked for', () => {
  it('is there when no specimen lacks any', () => {
    expect(judge([{ id: 'a', label: 'S-01', missing: [] }])).toBeNull();
  });

  it('may be missing with a reason', () => {
    const missing = [lack('modulus', 'The extensometer slipped')];
    expect(judge([{ id: 'a', label: 'S-01', missing }])).toBeNull();
  });

  it('is named by specimen when it is missing without one', () => {
    const found = judge([
      { id: 'a', label: 'S-01', missing: [lack('modulus', null), lack('peak', 'Said')] },
      { id: 'b', label: 'S-02', missing: [] },
      { id: 'c', label: 'S-03', missing: [lack('modulus', null), lack('yield', null)] },
    ]);
    expect(found?.code).toBe('bench/results-missing');
    expect(found?.sentence).toContain('S-01 (MODULUS); S-03 (MODULUS, YIELD)');
    expect(found?.facts).toEqual({
      missing: [
        { specimenId: 'a', label: 'S-01', results: [{ key: 'modulus', label: 'MODULUS', hint: null }] },
        {
          specimenId: 'c',
          label: 'S-03',
          results: [
            { key: 'modulus', label: 'MODULUS', hint: null },
            { key: 'yield', label: 'YIELD', hint: null },
          ],
        },
      ],
    });
  });
});
