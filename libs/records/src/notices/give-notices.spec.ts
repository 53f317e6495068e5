import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { untilDailyMs } from './give-notices.js';

const at = (instant: string) => untilDailyMs(Date.parse(instant), 'Europe/London') / MS_PER_HOUR;

describe('untilDailyMs', () => {
  it('waits for half past six by the clock on the wall', () => {
    expect(at('2026-11-25T04:30:00Z')).toBe(2);
    expect(at('2026-07-01T04:30:00Z')).toBe(1); // summer time: 05:30 on the wall
  });

  it('waits for tomorrow from that very moment on', () => {
    expect(at('2026-11-25T06:30:00Z')).toBe(24);
  });

  it('knows that the night in which the clock goes back lasts an hour longer', () => {
    expect(at('2026-10-24T06:30:00Z')).toBe(24 - 1 + 1); // 07:30 on the wall in summer time, next 06:30 is in winter time
    expect(at('2026-10-24T05:30:00Z')).toBe(25);
  });
});
