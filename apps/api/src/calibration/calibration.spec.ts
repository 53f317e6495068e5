import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import type { CalibrationEntity, ItemEntity, ShiftCheckEntity } from '#libs/records/src/index.js';
import { doubtOf } from './impact.service.js';
import { standingOf } from './standing.js';

const NOW = Date.parse('2026-11-25T12:00:00Z');
const at = (days: number) => new Date(NOW + days * MS_PER_DAY);

type Found = CalibrationEntity['asFound'];

function calibration(
  days: number,
  dueDays: number,
  direction = 'tension',
  asFound: Found = 'within',
): CalibrationEntity {
  const ranges = [{ direction, className: '1', from: 1, to: 2, unit: 'N' }];
  const id = `${days} ${direction}`;
  return { id, performedAt: at(days), validFrom: at(days), dueAt: at(dueDays), ranges, asFound } as CalibrationEntity;
}
const check = (days: number, passed: boolean) => ({ at: at(days), passed }) as ShiftCheckEntity;

describe('how a calibration stands', () => {
  const item = { needsCalibration: true, state: 'in-service' } as ItemEntity;
  const status = (...rows: CalibrationEntity[]) => standingOf(item, rows, NOW, 30).status;

  it('follows from dates: soon from 30 days on, overdue from the instant it is due', () => {
    expect(status(calibration(-10, 31))).toBe('in-force');
    expect(status(calibration(-10, 30))).toBe('due-soon');
    expect(status(calibration(-10, 0))).toBe('overdue');
    expect(status(calibration(-10, 1 / MS_PER_DAY))).toBe('due-soon');
  });

  it('is never without one, and that of the worst direction where they are apart', () => {
    expect(status()).toBe('never');
    expect(status(calibration(-10, 300), calibration(-400, -30, 'compression'))).toBe('overdue');
  });

  it('does not count where none is needed, or the item is out of use', () => {
    expect(standingOf({ ...item, needsCalibration: false }, [], NOW, 30).status).toBe('not-needed');
    expect(standingOf({ ...item, state: 'out-of-use' }, [calibration(-1, 300)], NOW, 30).status).toBe('out-of-use');
  });
});

describe('since when an item is in doubt', () => {
  const days = (ms: number) => (ms - NOW) / MS_PER_DAY;
  const doubt = (calibrations: CalibrationEntity[], checks: ShiftCheckEntity[] = []) => {
    const { sinceMs, untilMs, why } = doubtOf(calibrations, checks, NOW);
    return [days(sinceMs), days(untilMs), why];
  };

  it('runs from the last good one before the finding until the finding that put it right', () => {
    const wrong = calibration(-5, 360, 'tension', 'out-of-tolerance');
    expect(doubt([wrong, calibration(-370, -5)])).toEqual([-370, -5, 'Last found good by calibration']);
  });

  it('is not cut short by a check, which looks at one force, where a calibration found it wrong', () => {
    const wrong = calibration(-5, 360, 'tension', 'out-of-tolerance');
    expect(doubt([wrong, calibration(-370, -5)], [check(-20, true)])).toEqual([
      -370,
      -5,
      'Last found good by calibration',
    ]);
  });

  it('runs until now after a failed shift check, from the check before', () => {
    const checks = [check(-1, false), check(-2, true), check(-3, true)];
    expect(doubt([calibration(-30, 335)], checks)).toEqual([-2, 0, 'Last found good by shift check']);
  });

  it('runs from the last good one until now when nothing was found, and from ever without a good one', () => {
    expect(doubt([calibration(-30, 335)])).toEqual([-30, 0, 'Last found good by calibration']);
    expect(doubtOf([], [check(-1, false)], NOW)).toMatchObject({ sinceMs: 0, why: 'Never found good before' });
  });
});
