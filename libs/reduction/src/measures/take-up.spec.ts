import { takeUpFoot } from './take-up.js';

const x = Float64Array.from({ length: 401 }, (_, row) => row / 10_000); // strain 0 to 0.04
const footOf = (stressAt: (strain: number) => number) => takeUpFoot({ x, y: x.map(stressAt), peakIndex: 400 });

describe('takeUpFoot', () => {
  it('takes out a gap before a straight line', () => {
    expect(footOf((strain) => Math.max(0, 3000 * (strain - 0.005)))).toBeCloseTo(0.005, 6);
  });

  it('takes out slack before a curve that bends over', () => {
    const plastic = (strain: number) => 3000 * strain * (1 - strain / 0.2);
    expect(footOf((strain) => plastic(Math.max(0, strain - 0.001)))).toBeCloseTo(0.001, 4);
  });

  it('makes up no slack on a curve that is straight, bends over, or stiffens by a tenth', () => {
    expect(footOf((strain) => 3000 * strain)).toBe(0);
    expect(footOf((strain) => 3000 * strain * (1 - strain / 0.08))).toBe(0);
    expect(footOf((strain) => 130_000 * strain * (1 + 2.5 * strain))).toBe(0);
  });
});
