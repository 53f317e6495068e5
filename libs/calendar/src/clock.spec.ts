import { SetClock, SystemClock } from './clock.js';

describe('a clock', () => {
  it('shows the time of the machine', () => {
    const [before, shown, after] = [Date.now(), new SystemClock().nowMs(), Date.now()];
    expect(shown).toBeGreaterThanOrEqual(before);
    expect(shown).toBeLessThanOrEqual(after);
  });

  it('runs on from the instant that it was set to', async () => {
    const startMs = Date.parse('2027-02-28T03:00:00Z');
    const clock = new SetClock(startMs);
    expect(clock.nowMs()).toBeGreaterThanOrEqual(startMs);
    const early = clock.now();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(clock.now().getTime()).toBeGreaterThan(early.getTime());
    expect(clock.now().toISOString()).toMatch(/^2027-02-28T03:0/);
  });
});
