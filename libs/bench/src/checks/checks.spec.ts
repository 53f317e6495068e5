import type { CheckFacts, CheckedItem } from './check-facts.js';
import { checksFor } from './checks.js';
import { soakMinOf } from './temperature.js';

const item = (kind: string, tag: string, over: Partial<CheckedItem['item']> = {}): CheckedItem['item'] => ({
  kind,
  tag,
  utilities: [] as string[],
  ...over,
});
const CELL = { role: 'load-cell', item: item('load-cell', 'LC-1') };
const AIR_GRIPS = { role: 'ends', item: item('grip', 'GP-1', { utilities: ['compressed-air'] }) };
const GRIPPED: CheckFacts['needs'] = {
  ends: { by: 'grips' },
  specimen: { spanMm: null },
  strain: { gaugeLength: null },
  temperature: { value: 23 },
  alignmentMaxBendingPct: null,
};

function checks(needs: Partial<CheckFacts['needs']>, over: Partial<CheckFacts> = {}) {
  return checksFor({
    needs: { ...GRIPPED, ...needs },
    train: [CELL, { role: 'ends', item: item('grip', 'GP-1') }],
    frameTag: 'UF-1',
    limitStops: { startOpeningMm: 300, lowerStopMm: 290, upperStopMm: 350 },
    guardNeeded: false,
    soakMin: null,
    settings: { shiftCheckTolerancePct: 1, warmUpMin: 15 },
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

  it('demand the guard where the rules do, and where one was fitted', () => {
    expect(find('guard', {})!.required).toBe(false);
    expect(find('guard', {}, { guardNeeded: true })!.required).toBe(true);
    const fitted = find('guard', {}, { train: [CELL, { role: 'guard', item: item('guard', 'GU-1') }] })!;
    expect([fitted.required, fitted.detail]).toEqual([true, 'Close GU-1 before every start.']);
  });

  it('ask for the span of a bending fixture, and for clean platens', () => {
    const bent = { ends: { by: 'fixture' as const }, specimen: { spanMm: 64 } };
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

  it('say how hot the chamber is, and how long the specimen soaks', () => {
    const train = [CELL, { role: 'chamber', item: item('chamber', 'CH-1') }];
    const [hot, soakMin] = [{ temperature: { value: 80 } }, 18];
    expect(find('temperature', hot, { train, soakMin })!.detail).toBe(
      'CH-1 at 80 °C, then 18 min of soak before each specimen.',
    );
    expect(find('temperature', hot)).toBeUndefined();
  });

  // 10 min and 2 min a mm: 4 mm are 18 min, 4.1 mm are 18.2, of which the last minute is begun.
  it('round a soak up to whole minutes', () => {
    const chamber = { soakBaseMin: 10, soakMinPerMm: 2 };
    expect([soakMinOf(chamber, 4), soakMinOf(chamber, 4.1)]).toEqual([18, 19]);
  });
});
