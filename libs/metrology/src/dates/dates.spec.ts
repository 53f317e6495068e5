import { InvalidInput } from '#libs/errors/src/index.js';
import { calibrationDueAt } from './calibration-due.js';
import { calibrationStatus } from './calibration-status.js';
import { dueForecast } from './due-forecast.js';
import { lastKnownGood } from './last-known-good.js';
import { windowsInForce } from './windows-in-force.js';
import type { DueRequest } from './calibration-due.js';
import type { CalibrationFacts } from './calibration-status.js';

const day = (date: string) => Date.parse(`${date}T00:00Z`);
const period = (from: string, due: string) => ({ validFromMs: day(from), dueMs: day(due) });
const window = (from: string, to: string) => ({ startMs: day(from), endMs: day(to) });

describe('windowsInForce', () => {
  it('joins calibrations that follow without a gap, and leaves a lapse open', () => {
    const calibrations = [
      period('2025-03-10', '2026-03-10'),
      period('2023-02-01', '2024-02-01'),
      period('2024-02-20', '2025-02-20'),
    ];
    const renewed = [...calibrations, period('2026-03-01', '2027-03-01')];
    expect(windowsInForce(renewed)).toEqual([
      window('2023-02-01', '2024-02-01'),
      window('2024-02-20', '2025-02-20'),
      window('2025-03-10', '2027-03-01'),
    ]);
  });

  it('relies on the newest alone, even where an older one was due later', () => {
    expect(windowsInForce([period('2025-01-01', '2026-01-01'), period('2025-06-01', '2025-09-01')])).toEqual([
      window('2025-01-01', '2025-09-01'),
    ]);
  });

  it('takes the earlier due date of two that begin together', () => {
    expect(windowsInForce([period('2025-01-01', '2026-01-01'), period('2025-01-01', '2025-07-01')])).toEqual([
      window('2025-01-01', '2025-07-01'),
    ]);
  });

  it('ends where a calibration is withdrawn', () => {
    const withdrawn = { ...period('2025-01-01', '2026-01-01'), withdrawnFromMs: day('2025-04-01') };
    expect(windowsInForce([withdrawn])).toEqual([window('2025-01-01', '2025-04-01')]);
    expect(windowsInForce([{ ...withdrawn, withdrawnFromMs: day('2024-12-01') }])).toEqual([]);
  });

  it('is empty without calibrations', () => {
    expect(windowsInForce([])).toEqual([]);
  });
});

describe('calibrationStatus', () => {
  const facts: CalibrationFacts = Object.freeze({
    needsCalibration: true,
    outOfUse: false,
    calibrations: [period('2025-01-01', '2026-01-01')],
  });
  const DUE = day('2026-01-01');
  const THIRTY_DAYS_MS = 30 * 24 * 3_600_000;

  it.each([
    ['never', day('2025-01-01') - 1],
    ['in-force', day('2025-01-01')],
    ['in-force', DUE - THIRTY_DAYS_MS - 1],
    ['due-soon', DUE - THIRTY_DAYS_MS],
    ['due-soon', DUE - 1],
    ['overdue', DUE],
    ['overdue', DUE + 1],
  ])('is %p at %p', (name, nowMs) => {
    expect(calibrationStatus(facts, nowMs).name).toBe(name);
  });

  it('is due soon when the lab says so', () => {
    expect(calibrationStatus(facts, day('2025-10-15'), 90).name).toBe('due-soon');
    expect(calibrationStatus(facts, DUE - 1, 0).name).toBe('in-force');
  });

  it('looks through a renewal that is already there', () => {
    const renewed = { ...facts, calibrations: [...facts.calibrations, period('2025-12-15', '2026-12-15')] };
    expect(calibrationStatus(renewed, day('2025-12-20'))).toEqual({ name: 'in-force', dueMs: day('2026-12-15') });
  });

  it('stays overdue while the next calibration lies ahead', () => {
    const booked = { ...facts, calibrations: [...facts.calibrations, period('2026-02-01', '2027-02-01')] };
    expect(calibrationStatus(booked, day('2026-01-15'))).toEqual({ name: 'overdue', dueMs: DUE });
  });

  it('is out of use whatever the dates say, and not needed where nobody relies on it', () => {
    expect(calibrationStatus({ ...facts, outOfUse: true }, day('2025-06-01'))).toEqual({
      name: 'out-of-use',
      dueMs: DUE,
    });
    expect(calibrationStatus({ ...facts, needsCalibration: false }, DUE)).toEqual({ name: 'not-needed', dueMs: null });
  });
});

describe('calibrationDueAt', () => {
  const request: DueRequest = Object.freeze({
    standard: 'ASTM E4',
    performedMs: Date.parse('2025-02-28T09:00Z'),
    intervalMonths: null,
    zone: 'Europe/Berlin',
  });
  const dueAt = (change: Partial<DueRequest>) => new Date(calibrationDueAt({ ...request, ...change })).toISOString();

  it('takes the interval of the standard, or the shorter one of the lab', () => {
    expect(dueAt({})).toBe('2026-02-28T09:00:00.000Z');
    // Six months later Berlin is on summer time: 10:00 on the wall is 08:00 UTC.
    expect(dueAt({ intervalMonths: 6 })).toBe('2025-08-28T08:00:00.000Z');
  });

  it.each([
    ['ASTM E4', 18],
    ['ISO 9513', 18],
    ['ISO 7500-1', 12],
  ])('%s allows %p months and not one more', (standard, ceiling) => {
    expect(() => dueAt({ standard, intervalMonths: ceiling })).not.toThrow();
    expect(() => dueAt({ standard, intervalMonths: ceiling + 1 })).toThrow(`allowed is at most ${ceiling} months`);
  });

  it('asks for an interval where it knows none, and takes any', () => {
    expect(() => dueAt({ standard: 'own procedure' })).toThrow(InvalidInput);
    expect(dueAt({ standard: 'own procedure', intervalMonths: 24 })).toBe('2027-02-28T09:00:00.000Z');
  });

  it.each([0, -1, 1.5, NaN])('refuses %p months', (intervalMonths) => {
    expect(() => dueAt({ intervalMonths })).toThrow(InvalidInput);
  });
});

describe('dueForecast', () => {
  const NOW = day('2025-06-01');
  const item = (id: string, ...directions: CalibrationFacts['calibrations'][number][][]) => ({
    id,
    needsCalibration: true,
    outOfUse: false,
    directions,
  });
  const job = (id: string, start: string, end: string, ...itemIds: string[]) => ({
    id,
    startMs: day(start),
    endMs: day(end),
    itemIds,
  });

  const ITEMS = [
    item('in-90-days', [period('2024-08-30', '2025-08-30')]),
    item('in-91-days', [period('2024-08-31', '2025-08-31')]),
    item('overdue', [period('2024-05-01', '2025-05-01')]),
    item('never'),
    { ...item('out-of-use', [period('2024-05-01', '2025-05-01')]), outOfUse: true },
    { ...item('adapter'), needsCalibration: false },
  ];

  it('lists what falls due within the horizon, the most urgent first', () => {
    expect(dueForecast(ITEMS, [], NOW, 90).map(({ itemId, status }) => [itemId, status])).toEqual([
      ['never', 'never'],
      ['overdue', 'overdue'],
      ['in-90-days', 'in-force'],
    ]);
  });

  it('names the jobs that it would stop: those that are not covered to their end', () => {
    const jobs = [
      job('after', '2025-09-01', '2025-09-02', 'in-90-days'),
      job('across', '2025-08-29', '2025-08-31', 'in-90-days'),
      job('to the last instant', '2025-08-28', '2025-08-30', 'in-90-days'),
      job('elsewhere', '2025-09-01', '2025-09-02', 'in-91-days'),
    ];
    expect(dueForecast(ITEMS, jobs, NOW, 90).find(({ itemId }) => itemId === 'in-90-days')?.stops).toEqual([
      'across',
      'after',
    ]);
  });

  it('does not stop a job that a booked renewal covers', () => {
    const renewed = item('cell', [period('2024-08-30', '2025-08-30'), period('2025-08-20', '2026-08-20')]);
    const jobs = [job('after', '2025-09-01', '2025-09-02', 'cell')];
    expect(dueForecast([renewed], jobs, NOW, 90)).toEqual([]);
  });

  it('stops a job that one direction does not cover, and counts the worst direction', () => {
    const cell = item('cell', [period('2024-07-01', '2025-07-01')], [period('2024-12-01', '2025-12-01')]);
    const jobs = [job('in July', '2025-07-02', '2025-07-03', 'cell')];
    expect(dueForecast([cell], jobs, NOW, 90, 30)).toEqual([
      { itemId: 'cell', status: 'due-soon', dueMs: day('2025-07-01'), stops: ['in July'] },
    ]);
  });
});

describe('lastKnownGood', () => {
  const evidence = [
    { atMs: day('2025-01-01'), kind: 'calibration' as const, good: true },
    { atMs: day('2025-05-02'), kind: 'shift-check' as const, good: true },
    { atMs: day('2025-05-03'), kind: 'shift-check' as const, good: false },
    { atMs: day('2025-05-04'), kind: 'shift-check' as const, good: true },
  ];

  it('is the last good calibration or check before the finding', () => {
    expect(lastKnownGood(evidence, day('2025-05-03'))).toEqual(evidence[1]);
    expect(lastKnownGood(evidence, day('2025-05-05'))).toEqual(evidence[3]);
  });

  it('does not count what was shown at the instant of the finding or after it', () => {
    expect(lastKnownGood(evidence, day('2025-05-04'))).toEqual(evidence[1]);
  });

  it('is null when nothing shows that it ever was right', () => {
    expect(lastKnownGood(evidence, day('2025-01-01'))).toBeNull();
    expect(lastKnownGood([], day('2025-05-05'))).toBeNull();
  });
});
