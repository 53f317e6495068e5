import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { InvalidInput } from '#libs/errors/src/index.js';
import { shiftCheckNeeded } from './shift-check-due.js';
import { judgeShiftCheck } from './shift-check.js';
import type { ShiftCheckFacts } from './shift-check-due.js';

describe('judgeShiftCheck', () => {
  const check = (reading: number, reference = 49.03325) => judgeShiftCheck({ reference, reading, tolerancePct: 1 });

  it.each([
    [202, 2, 1, true], // exactly on the tolerance of 2 N
    [202.01, 2.01, 1.005, false],
    [198, -2, -1, true],
    [197.99, -2.01, -1.005, false],
    [200, 0, 0, true],
  ])('a reading of %p N at 200 N is off by %p N, %p %%: %p', (reading, error, errorPct, passed) => {
    const outcome = check(reading, 200);
    expect(outcome.error).toBeCloseTo(error, 9);
    expect(outcome.errorPct).toBeCloseTo(errorPct, 9);
    expect(outcome.allowed).toBe(2);
    expect(outcome.passed).toBe(passed);
  });

  it('takes the tolerance that the lab has set', () => {
    // 0.5 % of 400 N is 2 N.
    expect(judgeShiftCheck({ reference: 400, reading: 402, tolerancePct: 0.5 })).toMatchObject({
      allowed: 2,
      passed: true,
    });
    expect(judgeShiftCheck({ reference: 400, reading: 402.1, tolerancePct: 0.5 }).passed).toBe(false);
  });

  it('judges compression by size', () => {
    expect(check(-202, -200)).toMatchObject({ error: -2, errorPct: -1, passed: true });
    expect(check(200, -200).passed).toBe(false);
  });

  it('refuses a reference of 0, a tolerance of 0 and a reading that is no number', () => {
    expect(() => check(1, 0)).toThrow(/reference is 0/);
    expect(() => judgeShiftCheck({ reference: 1, reading: 1, tolerancePct: 0 })).toThrow(InvalidInput);
    expect(() => check(NaN)).toThrow(/reading/);
  });
});

describe('shiftCheckNeeded', () => {
  const at = (clock: string) => Date.parse(`2025-06-02T${clock}Z`);

  const HOLDS: ShiftCheckFacts = Object.freeze({
    nowMs: at('10:00'),
    lastCheck: { atMs: at('06:10'), passed: true },
    fittedAtMs: at('06:05'),
    shiftStartMs: at('06:00'),
    overloadedAtMs: null,
    longestHours: 12,
  });

  it('is not needed when the last one holds', () => {
    expect(shiftCheckNeeded(HOLDS)).toBeNull();
  });

  it.each<[string, Partial<ShiftCheckFacts>, ReturnType<typeof shiftCheckNeeded>]>([
    ['there never was one', { lastCheck: null }, 'never-checked'],
    ['the last one failed', { lastCheck: { atMs: at('06:10'), passed: false } }, 'failed'],
    ['the cell was fitted since', { fittedAtMs: at('06:11') }, 'fitted-since'],
    ['the cell was fitted in that minute', { fittedAtMs: at('06:10') }, null],
    ['a shift began since', { shiftStartMs: at('06:11') }, 'new-shift'],
    ['the cell was overloaded since', { overloadedAtMs: at('06:10') }, 'overloaded-since'],
    ['it was overloaded before', { overloadedAtMs: at('06:09') }, null],
    ['nobody is on shift and it is fresh', { shiftStartMs: null }, null],
    ['it is 12 h old', { nowMs: at('06:10') + 12 * MS_PER_HOUR }, null],
    ['it is older than 12 h', { nowMs: at('06:10') + 12 * MS_PER_HOUR + 1 }, 'too-old'],
    ['the lab allows 3 h', { longestHours: 3 }, 'too-old'],
  ])('when %s', (_why, change, reason) => {
    expect(shiftCheckNeeded({ ...HOLDS, ...change })).toBe(reason);
  });
});
