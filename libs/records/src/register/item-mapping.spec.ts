import type { CalibrationEntity } from '../calibration/calibration.entity.js';
import type { FaultEntity } from './fault.entity.js';
import { calibrationsOf, itemOf } from './item-mapping.js';
import type { ItemWindowEntity } from './item-window.entity.js';
import type { ItemEntity } from './item.entity.js';

const day = (date: string) => new Date(`${date}T00:00:00Z`);
const ms = (date: string) => day(date).getTime();

function calibration(id: string, from: string, due: string, over: Partial<CalibrationEntity> = {}): CalibrationEntity {
  const range = { direction: 'tension' as const, className: '1', from: 50, to: 5000, unit: 'N' as const };
  const dates = { performedAt: day(from), validFrom: day(from), dueAt: day(due) };
  return { id, standard: 'ISO 7500-1', ranges: [range], replaces: null, ...dates, ...over } as CalibrationEntity;
}

describe('the calibrations that count', () => {
  it('end when they are due, or when the next of the same direction begins', () => {
    const first = calibration('a', '2026-01-01', '2027-01-01');
    const second = calibration('b', '2026-06-01', '2027-06-01');
    expect(calibrationsOf([second, first]).map(({ validFromMs, dueMs }) => [validFromMs, dueMs])).toEqual([
      [ms('2026-06-01'), ms('2027-06-01')],
      [ms('2026-01-01'), ms('2026-06-01')],
    ]);
  });

  it('stand beside one of another direction', () => {
    const pulled = calibration('a', '2026-01-01', '2027-01-01');
    const pushed = calibration('b', '2026-06-01', '2027-06-01');
    pushed.ranges = [{ ...pulled.ranges[0]!, direction: 'compression' }];
    expect(calibrationsOf([pulled, pushed])[0]).toMatchObject({ direction: 'tension', dueMs: ms('2027-01-01') });
  });

  it('are not those without a class, which still end what was before', () => {
    const good = calibration('a', '2026-01-01', '2027-01-01');
    const failed = calibration('b', '2026-03-01', '2027-03-01');
    failed.ranges = [{ ...good.ranges[0]!, className: null }];
    expect(calibrationsOf([good, failed])).toEqual([expect.objectContaining({ dueMs: ms('2026-03-01') })]);
  });

  it('end with the one that was entered later, where certificates of one day state the day alone', () => {
    const noon = { performedAt: day('2026-06-01'), validFrom: day('2026-06-01') };
    const good = calibration('a', '2026-06-01', '2027-06-01', { ...noon, enteredAt: day('2026-06-02') });
    const failed = calibration('b', '2026-06-01', '2027-06-01', { ...noon, enteredAt: day('2026-06-03') });
    failed.ranges = [{ ...good.ranges[0]!, className: null }];
    for (const rows of [
      [good, failed],
      [failed, good],
    ])
      expect(calibrationsOf(rows)).toEqual([]);
  });

  it('are not those that a correction replaced', () => {
    const typed = calibration('a', '2026-01-01', '2028-01-01');
    const corrected = calibration('b', '2026-01-01', '2027-01-01', { replaces: 'a' });
    expect(calibrationsOf([typed, corrected])).toEqual([expect.objectContaining({ dueMs: ms('2027-01-01') })]);
  });
});

describe('an item of the register', () => {
  const row = { id: 'i', kind: 'grip', state: 'in-service', details: {} } as ItemEntity;
  const fault = (closedAt: Date | null) => ({ closedAt }) as FaultEntity;

  it('is faulty while one fault is open', () => {
    expect(itemOf(row, [], [fault(day('2026-01-01'))], []).state).toBe('in-service');
    expect(itemOf(row, [], [fault(day('2026-01-01')), fault(null)], []).state).toBe('faulty');
    expect(itemOf({ ...row, state: 'out-of-use' }, [], [fault(null)], []).state).toBe('out-of-use');
  });

  it('is held while it is down, lent or away, and not by an extra shift', () => {
    const span = { startsAt: day('2026-05-01'), endsAt: day('2026-05-02') };
    const windows = ['down', 'extra-shift'].map((kind) => ({ kind, ...span }) as ItemWindowEntity);
    expect(itemOf(row, [], [], windows).heldWindows).toEqual([{ startMs: ms('2026-05-01'), endMs: ms('2026-05-02') }]);
  });
});
