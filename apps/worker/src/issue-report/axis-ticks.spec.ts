import { axisTicks } from './axis-ticks.js';

describe('the figures along an axis', () => {
  it('are round and span the values', () => {
    expect(axisTicks([0, 57.9])).toEqual({ from: 0, to: 60, ticks: ['0', '10', '20', '30', '40', '50', '60'] });
  });

  it('show zero when the values come near it, and not when they are far away', () => {
    expect(axisTicks([3, 11]).from).toBe(0);
    expect(axisTicks([98, 101]).from).toBe(98);
  });

  it('keep the decimals that their step needs', () => {
    expect(axisTicks([0, 0.25]).ticks).toEqual(['0.00', '0.05', '0.10', '0.15', '0.20', '0.25']);
  });

  it('stand for one value and for none', () => {
    expect(axisTicks([5])).toMatchObject({ from: 5 });
    expect(axisTicks([])).toEqual({ from: 0, to: 1, ticks: ['0', '1'] });
  });
});
