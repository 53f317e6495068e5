import { InvalidInput } from '#libs/errors/src/index.js';
import { indicatorResolution } from './indicator-resolution.js';
import { lowestForceByResolution } from './lowest-force.js';

describe('indicatorResolution', () => {
  it.each([
    [0.5, 0, 0.5],
    [0.5, 0.5, 0.5], // steady to one increment
    [0.5, 0.6, 0.8], // half of 0.6 plus 0.5
    [0.5, 3, 2],
  ])('of a display with steps of %p that moves by %p is %p', (increment, fluctuation, resolution) => {
    expect(indicatorResolution(increment, fluctuation)).toBeCloseTo(resolution, 12);
  });

  it('refuses a display without steps and a negative fluctuation', () => {
    expect(() => indicatorResolution(0, 1)).toThrow(InvalidInput);
    expect(() => indicatorResolution(1, -0.1)).toThrow(InvalidInput);
  });
});

describe('lowestForceByResolution', () => {
  it('is 400, 200, 100 and 67 resolutions', () => {
    // The 100 kN range of test/published/metrology: r = 5 N.
    expect(lowestForceByResolution(5)).toEqual([
      { className: '0.5', lowest: 2000 },
      { className: '1', lowest: 1000 },
      { className: '2', lowest: 500 },
      { className: '3', lowest: 335 },
    ]);
  });

  it('refuses a resolution of 0', () => {
    expect(() => lowestForceByResolution(0)).toThrow(InvalidInput);
  });
});
