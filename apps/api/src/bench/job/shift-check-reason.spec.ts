import type { LabSettings } from '#libs/contract/src/index.js';
import type { ShiftCheckEntity } from '#libs/records/src/index.js';
import { shiftCheckReason } from './shift-check-reason.js';

// A Monday in winter: London keeps UTC.
const at = (clock: string) => new Date(`2026-03-02T${clock}:00Z`);
const settings = {
  timeZone: 'Europe/London',
  shifts: [
    { weekday: 1, from: '06:00', to: '14:00', name: 'early' },
    { weekday: 1, from: '14:00', to: '22:00', name: 'late' },
  ],
  shiftCheckValidMin: 720,
} as LabSettings;

const reason = (
  now: string,
  checked: string | null,
  { fitted = '05:00', closedDays = [] as string[], passed = true } = {},
) =>
  shiftCheckReason({
    nowMs: at(now).getTime(),
    ...{ settings, closedDays, cellId: 'cell' },
    rig: [{ itemId: 'cell', frameId: 'frame', role: 'load-cell', fittedAt: at(fitted) }],
    last: checked === null ? null : ({ at: at(checked), passed } as ShiftCheckEntity),
  });

describe('a shift check', () => {
  it('holds for the shift in which it was made', () => {
    expect(reason('13:59', '06:00')).toBeNull();
    expect(reason('14:00', '06:00')).toBe('new-shift');
  });

  it('holds over a shift change on a day on which the lab is closed, as long as the settings say', () => {
    const closed = { closedDays: ['2026-03-02'] };
    expect(reason('18:00', '06:00', closed)).toBeNull();
    expect(reason('18:01', '06:00', closed)).toBe('too-old');
  });

  it('is needed after the cell was fitted, after one that failed, and before the first', () => {
    expect(reason('08:00', '06:10', { fitted: '06:11' })).toBe('fitted-since');
    expect(reason('08:00', '06:10', { passed: false })).toBe('failed');
    expect(reason('08:00', null)).toBe('never-checked');
  });
});
