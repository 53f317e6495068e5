import type { LabSettings } from '#libs/contract/src/index.js';
import type { Item, Needs, Verdict } from '#libs/matching/src/index.js';
import { checksFor } from './bench-checks.js';
import type { CheckFacts } from './bench-checks.js';

const item = (kind: string, tag: string, over: object = {}) =>
  ({ kind, tag, utilities: [], ...over }) as unknown as Item;
const CELL = { role: 'load-cell', item: item('load-cell', 'LC-1') };
const AIR_GRIPS = { role: 'ends', item: item('grip', 'GP-1', { utilities: ['compressed-air'] }) };
const GRIPPED = {
  ends: { by: 'grips' },
  specimen: { spanMm: null },
  strain: { gaugeLength: null },
  alignmentMaxBendingPct: null,
};

function checks(needs: object, over: Partial<CheckFacts> = {}) {
  return checksFor({
    needs: { ...GRIPPED, ...needs } as unknown as Needs,
    train: [CELL, { role: 'ends', item: item('grip', 'GP-1') }],
    frameTag: 'UF-1',
    limitStops: { startOpeningMm: 300, lowerStopMm: 290, upperStopMm: 350 },
    verdicts: [],
    settings: { shiftCheckTolerancePct: 1, warmUpMin: 15 } as LabSettings,
    shiftCheck: null,
    ...over,
  });
}
const keys = (...of: Parameters<typeof checks>) => checks(...of).map(({ key }) => key);
const find = (key: string, ...of: Parameters<typeof checks>) => checks(...of).find((check) => check.key === key);

describe('the checks before the first specimen', () => {
  it('come in working order', () => {
    expect(keys({})).toEqual([
      'shift-check',
      'limit-stops',
      'guard',
      'emergency-stop',
      'warm-up',
      'channels',
      'faces',
      'zero',
    ]);
  });

  it('name the computed stops', () => {
    expect(find('limit-stops', {})!.detail).toMatch(/lower stop at 290 mm, upper stop at 350 mm/);
  });

  it('ask for air where a grip needs it', () => {
    expect(find('air-pressure', {}, { train: [CELL, AIR_GRIPS] })!.detail).toContain('GP-1');
  });

  it('demand the guard only where the rules need one', () => {
    const needed = { rule: 'guarding', reason: 'guard-too-weak', outcome: 'pass' } as Verdict;
    const only = { rule: 'guarding', reason: 'hazards', outcome: 'caution' } as Verdict;
    expect([find('guard', {})!.required, find('guard', {}, { verdicts: [only] })!.required]).toEqual([false, false]);
    expect(find('guard', {}, { verdicts: [needed] })!.required).toBe(true);
  });

  it('ask for the span of a bending fixture, and for clean platens', () => {
    const bent = { ends: { by: 'fixture' }, specimen: { spanMm: 64 } };
    expect([find('fixture', bent)!.detail, find('zero', bent)!.label]).toEqual([
      expect.stringContaining('64 mm'),
      expect.stringContaining('before contact'),
    ]);
    expect(keys({ ends: { by: 'platens' } })).toContain('platens');
  });

  it('ask for the alignment as a value with its limit, where the method does', () => {
    expect(find('alignment', { alignmentMaxBendingPct: 5 })).toMatchObject({
      kind: 'value',
      unit: '%',
      max: 5,
      required: true,
    });
    expect(find('alignment', {})).toBeUndefined();
  });

  it('say how long the specimen soaks: 10 min and 2 min a mm of 4 mm are 18 min', () => {
    const chamber = {
      role: 'chamber',
      item: item('chamber', 'CH-1', { details: { soakBaseMin: 10, soakMinPerMm: 2 } }),
    };
    const hot = { temperature: { value: 80 }, specimen: { spanMm: null, bodyThicknessMm: 4 } };
    expect(find('temperature', hot, { train: [CELL, chamber] })!.detail).toMatch(/80 °C, then 18 min/);
  });
});
