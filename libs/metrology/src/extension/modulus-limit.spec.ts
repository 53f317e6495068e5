import { InvalidInput } from '#libs/errors/src/index.js';
import { modulusExtensionLimitMm } from './modulus-limit.js';

describe('modulusExtensionLimitMm', () => {
  // ISO 527-1:2019 5.1.5.1 gives 1.0 µm at 50 mm and 1.5 µm at 75 mm.
  it.each([
    [20, 0.001],
    [50, 0.001],
    [75, 0.0015],
  ])('at %p mm gauge length is %p mm', (gaugeLengthMm, limitMm) => {
    expect(modulusExtensionLimitMm(gaugeLengthMm)).toBeCloseTo(limitMm, 12);
  });

  it('has no figure below 20 mm', () => {
    expect(() => modulusExtensionLimitMm(19.9)).toThrow(InvalidInput);
  });
});
