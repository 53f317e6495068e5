import type { ConformityAsk } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import { batchResults } from './batch-results.js';

const method = {
  ...{
    designation: 'ISO 527-2',
    testType: 'tension',
    results: ['peak-stress', 'strain-at-break'],
    shapes: ['rectangle'],
    reduction: { kind: 'tension', break: { way: 'load-drop', share: 0.5 } },
  },
  reportSteps: { 'peak-stress': { step: 0.1 }, 'strain-at-break': { step: 0.005 } },
} as unknown as Method;

const specimens = ['a', 'b', 'c', 'd'].map((id) => ({
  id,
  label: `R-1-${id}`,
  fate: id === 'd' ? 'invalid' : 'tested',
  invalidWhy: id === 'd' ? 'broke in the jaw' : null,
  missing: id === 'b' ? [{ key: 'strain-at-break', label: 'Strain at break', why: 'it slipped' }] : [],
}));
const result = (specimenId: string, key: string, value: number) => ({
  specimenId,
  key,
  value,
  revision: 1,
  flags: [],
  reads: null,
});

function whole(conformity: ConformityAsk | null, forcePct: number | null = 1) {
  return batchResults({
    ...{ id: 'batch', label: 'dry', material: 'PA66', method, specimens, conformity },
    results: [
      result('a', 'peak-stress', 60),
      result('b', 'peak-stress', 62),
      result('c', 'peak-stress', 64),
      result('d', 'peak-stress', 9),
      result('a', 'strain-at-break', 0.035),
    ],
    doubts: { forcePct, extensometer: null, geometry: { shape: 'rectangle' } },
  });
}

const limit: ConformityAsk = {
  resultKey: 'peak-stress',
  lower: 60,
  upper: null,
  unit: 'MPa',
  of: 'mean',
  rule: 'simple',
  specification: 'NM-1',
};

describe('the results of a batch', () => {
  it('stand with their definitions', () => {
    expect(whole(null).columns.map(({ definition }) => definition)).toEqual([
      'highest force over the original section',
      'total strain, elastic part included, at break (last point before the force falls below 50 % of its highest)',
    ]);
  });

  it('show an invalid specimen and do not count it', () => {
    const { rows, statistics } = whole(null);
    expect(rows[3]).toMatchObject({
      label: 'R-1-d',
      ...{ invalidWhy: 'broke in the jaw', missing: [] },
      values: { 'peak-stress': { value: 9 } },
    });
    expect(rows[1]?.missing).toEqual([{ key: 'strain-at-break', label: 'Strain at break', why: 'it slipped' }]);
    expect(statistics[0]).toMatchObject({ key: 'peak-stress', n: 3, mean: 62, standardDeviation: 2 });
  });

  it('turn strain from a fraction into percent, and its step with it', () => {
    const { columns, rows } = whole(null);
    expect(columns[1]).toMatchObject({
      key: 'strain-at-break',
      label: 'Strain at break',
      unit: '%',
      step: 0.5,
      digits: null,
    });
    expect(rows[0]!.values['strain-at-break']!.value).toBeCloseTo(3.5, 12);
  });

  it('give the mean an uncertainty with its budget', () => {
    // Force 1/√3 %, width and thickness 0.5/√3 % each, scatter 2/√3/62 = 1.862 %: u = √(0.3333 + 0.1667 + 3.4684) = 1.992 %.
    // ν = 1.992⁴/(1.862⁴/2) = 2.6, cut to 2; t at 95.45 % and 2 is 4.53 (GUM, table G.2).
    const { uncertainty } = whole(null).statistics[0]!;
    expect(uncertainty!.expanded).toBeCloseTo((4.5266 * 1.9921 * 62) / 100, 2);
    expect(uncertainty).toMatchObject({ k: expect.closeTo(4.53, 2), degreesOfFreedom: 2 });
    expect(uncertainty!.budget.reduce((sum, { contributionPct }) => sum + contributionPct, 0)).toBeCloseTo(100, 9);
  });

  it('state conformity by the agreed rule: met, not met, and too near to say', () => {
    expect(whole(limit).conformity!.statement).toBe('conforms');
    expect(whole({ ...limit, lower: 62.1 }).conformity!.statement).toBe('does not conform');
    expect(whole({ ...limit, rule: 'guarded' }).conformity!.statement).toBe('cannot be stated');
    // 62 less 5.59 MPa.
    expect(whole({ ...limit, rule: 'guarded', lower: 56.5 }).conformity!.statement).toBe('cannot be stated');
    expect(whole({ ...limit, rule: 'guarded', lower: 56.3 }).conformity!.statement).toBe('conforms');
  });

  it('guard each specimen by how well one is measured, not by how they scatter', () => {
    // U of one = 2 · √((1/√3)² + 2 · (0.5/√3)²) % of 62 MPa = 2 · 0.7071 % · 62 = 0.877 MPa: all three clear 59 MPa, 60 MPa does not clear 59.5.
    const each: ConformityAsk = { ...limit, of: 'each', rule: 'guarded' };
    expect(whole({ ...each, lower: 59 }).conformity).toMatchObject({ statement: 'conforms' });
    expect(whole({ ...each, lower: 59 }).conformity!.detail).toContain('U of one: 0.88 MPa');
    expect(whole({ ...each, lower: 59.5 }).conformity!.statement).toBe('cannot be stated');
  });

  it('say in words, beside the statement, what was flagged on the figures that it rests on', () => {
    const flagged = (id: string, value: number) => ({
      ...result(id, 'peak-stress', value),
      flags: ['The load was cut off.'],
    });
    const { conformity } = batchResults({
      ...{ id: 'batch', label: 'dry', material: 'PA66', method, specimens, conformity: limit },
      results: [flagged('a', 60), result('b', 'peak-stress', 62), flagged('c', 64), flagged('d', 9)],
      doubts: { forcePct: 1, extensometer: null, geometry: { shape: 'rectangle' } },
    });
    expect(conformity!.detail).toMatch(/ Remark on R-1-a, R-1-c: The load was cut off\.$/);
    expect(whole(limit).conformity!.detail).not.toContain('Remark');
  });

  it('do not state it where the limits are in another unit than the result', () => {
    const { statement, detail } = whole({ ...limit, unit: 'kN' }).conformity!;
    expect(statement).toBe('cannot be stated');
    expect(detail).toContain('not in the unit of the result, MPa');
  });

  it('do not state it when it must be guarded and no uncertainty is known', () => {
    expect(whole({ ...limit, rule: 'guarded', lower: 10 }, null).conformity!.statement).toBe('cannot be stated');
  });

  it('do not state it while a tested specimen lacks the result, and name it', () => {
    const strain: ConformityAsk = { ...limit, resultKey: 'strain-at-break', lower: 3, unit: '%', of: 'each' };
    expect(whole(strain).conformity).toMatchObject({
      statement: 'cannot be stated',
      detail: expect.stringContaining('The result of R-1-b, R-1-c is missing.'),
    });
    expect(whole({ ...strain, of: 'mean' }).conformity!.statement).toBe('cannot be stated');
    expect(whole({ ...strain, lower: 3.6 }).conformity!.statement).toBe('does not conform');
  });

  it('tell the value as computed where its printed figure lies on the other side of the limit', () => {
    const { statement, detail } = whole({ ...limit, of: 'each', lower: 60.04 }).conformity!;
    expect(statement).toBe('does not conform');
    expect(detail).not.toContain('Compared as computed');
    const near = whole({ ...limit, of: 'each', lower: 59.98 }, 1).conformity!;
    expect(near.statement).toBe('conforms');
    const below = batchResults({
      ...{ id: 'batch', label: 'dry', material: null, method, specimens: specimens.slice(0, 1) },
      results: [result('a', 'peak-stress', 59.96)],
      doubts: { forcePct: 1, extensometer: null, geometry: { shape: 'rectangle' } },
      conformity: { ...limit, of: 'each' },
    }).conformity!;
    expect(below.statement).toBe('does not conform');
    expect(below.detail).toContain('Compared as computed, before rounding: R-1-a is 59.96 MPa, printed as 60.0.');
  });
});
