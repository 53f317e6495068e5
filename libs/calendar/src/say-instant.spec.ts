import { sayInstant } from './say-instant.js';

describe('an instant in words', () => {
  it('is said on the wall clock of the zone, summer and winter', () => {
    expect(sayInstant(Date.parse('2026-11-27T14:00:00Z'), 'Europe/London')).toBe('Fri 27 Nov, 14:00');
    expect(sayInstant(Date.parse('2026-07-03T14:05:00Z'), 'Europe/Berlin')).toBe('Fri 3 Jul, 16:05');
  });
});
