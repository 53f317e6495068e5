import { readFigure } from './read-figure.js';

const NEWTON = { unit: 'N', factor: 1 };
const MPA = { unit: 'MPa', factor: 1 };
const PERCENT = { unit: '%', factor: 100 };

describe('a figure as typed', () => {
  it.each([
    ['peak-load', 2.8, 'kN', NEWTON, 2800, 'N'],
    ['peak-load', 2800, 'N', NEWTON, 2800, 'N'],
    ['peak-load', 100, 'lbf', NEWTON, 444.822, 'N'],
    ['peak-load', 250, 'N·cm', { unit: 'N·m', factor: 1 }, 2.5, 'N·m'],
    ['modulus', 8.9, 'GPa', MPA, 8900, 'MPa'],
    ['strain-at-break', 3.6, '%', PERCENT, 0.036, 'mm/mm'],
    ['strain-at-break', 0.036, 'mm/mm', PERCENT, 0.036, 'mm/mm'],
    ['mean-peel', 2, 'kN/m', { unit: 'N/mm', factor: 1 }, 2, 'N/mm'],
    ['stiffness', 1.5, 'kN/mm', { unit: 'N/mm', factor: 1 }, 1500, 'N/mm'],
    ['energy-to-break', 1200, 'mJ', { unit: 'J', factor: 1 }, 1.2, 'J'],
  ])('%s %p %s is kept in its own unit (%#)', (key, value, unit, shown, kept, keptUnit) => {
    const figure = readFigure({ key, value, unit }, shown, 'results[0]');
    expect(figure).toMatchObject({ key, value: expect.closeTo(kept, 3), unit: keptUnit });
  });

  it('remembers the unit of its writer: 2.8 kN is 2.8 × 1000 N, 3.6 % is 3.6 × 0.01', () => {
    const force = readFigure({ key: 'peak-load', value: 2.8, unit: 'kN' }, NEWTON, 'results[0]');
    expect(force).toMatchObject({ typed: { unit: 'kN', factor: 1000 } });
    const strain = readFigure({ key: 'strain-at-break', value: 3.6, unit: '%' }, PERCENT, 'results[0]');
    expect(strain).toMatchObject({ typed: { unit: '%', factor: 0.01 } });
  });

  it('in a unit of another quantity is refused by its place', () => {
    expect(readFigure({ key: 'peak-load', value: 1, unit: 'mm' }, NEWTON, 'results[2]')).toMatchObject({
      field: 'results[2].unit',
      found: 'mm',
    });
  });

  it('without a unit takes none', () => {
    const shown = { unit: '', factor: 1 };
    expect(readFigure({ key: 'hardening-exponent', value: 0.2, unit: '' }, shown, 'results[0]')).toMatchObject({
      value: 0.2,
      unit: '',
    });
    expect(readFigure({ key: 'hardening-exponent', value: 0.2, unit: 'MPa' }, shown, 'results[0]')).toMatchObject({
      allowed: 'no unit',
    });
  });
});
