import { figureProblem } from './figure-problem.js';

/** A cell for 5 kN on a bar of 10 mm × 4 mm (40 N for each MPa), in a frame with 1200 mm of travel. */
const ON_A_BAR = Object.freeze({
  cell: { tag: 'LC-5K', capacity: 5000 },
  loadUnit: 'N' as const,
  loadPerStress: 40,
  isMeasured: false,
  travelMm: 1200,
});
const MEASURED = Object.freeze({ ...ON_A_BAR, isMeasured: true });
const COMPONENT = Object.freeze({ ...ON_A_BAR, loadPerStress: null });
const TWISTED = Object.freeze({
  ...{ cell: { tag: 'TC-20', capacity: 20 }, loadUnit: 'N·m' as const, loadPerStress: 0.2, isMeasured: true },
  travelMm: null,
});

const problem = (key: string, value: number, unit: string, carrier: Parameters<typeof figureProblem>[2]) =>
  figureProblem({ key, value, unit, typed: { unit, factor: 1 } }, 'results[0].value', carrier);

describe('a load', () => {
  it.each([
    ['peak-load', 5000, false],
    ['peak-load', 5000.1, true],
    ['peak-load', 0, true],
    ['peak-load', 0.1, false],
    // A fabric's tear is a force: no thickness is measured.
    ['mean-tear-peaks', 5000, false],
    ['mean-tear-peaks', 5001, true],
    ['median-tear-peaks', 1e9, true],
    ['stress-at-strain@20', 5001, true],
  ])('%s of %p N on a cell for 5000 N is refused: %p', (key, value, refused) => {
    expect(problem(key, value, 'N', COMPONENT) !== null).toBe(refused);
  });

  it('says what the cell carries, and what to do', () => {
    expect(problem('mean-tear-peaks', 1e9, 'N', COMPONENT)).toMatchObject({
      field: 'results[0].value',
      allowed: 'a number, more than 0 and at most 5000',
      unit: 'N',
      sentence: expect.stringContaining('LC-5K is rated for no more'),
    });
  });

  it('is told in the unit in which it was typed', () => {
    const typed = { unit: 'kN', factor: 1000 };
    expect(figureProblem({ key: 'peak-load', value: 5001, unit: 'N', typed }, 'v', ON_A_BAR)?.sentence).toMatch(
      /^v is 5\.001 kN; allowed is a number, more than 0 and at most 5 kN\./,
    );
  });

  it('is a torque where the cell senses one', () => {
    expect(problem('peak-load', 20, 'N·m', TWISTED)).toBeNull();
    expect(problem('peak-load', 20.1, 'N·m', TWISTED)?.unit).toBe('N·m');
  });
});

describe('what follows from a load', () => {
  // 5000 N / 40 N per MPa = 125 MPa: twice that on lengths that were asked for, one and a half on measured ones.
  it.each([
    ['peak-stress', ON_A_BAR, 250, false],
    ['peak-stress', ON_A_BAR, 250.1, true],
    ['upper-yield', ON_A_BAR, 250.1, true],
    ['offset-yield', MEASURED, 187.5, false],
    ['offset-yield', MEASURED, 187.6, true],
    ['stress-at-break', MEASURED, -0.1, true],
    // 20 N·m / 0.2 N·m per MPa = 100 MPa.
    ['peak-stress', TWISTED, 150, false],
    ['peak-stress', TWISTED, 150.1, true],
    // No length says more: 20 GPa is above every material.
    ['peak-stress', COMPONENT, 20_000, false],
    ['peak-stress', COMPONENT, 20_001, true],
  ])('%s is held to the load behind it (%#)', (key, carrier, value, refused) => {
    expect(problem(key, value, 'MPa', carrier) !== null).toBe(refused);
  });

  it.each(['mean-peel', 'least-peel', 'highest-peel', 'mean-tear-peaks', 'median-tear-peaks'])(
    'a force per width or thickness, %s, is held to it as well',
    (key) => {
      expect(problem(key, 250, 'N/mm', ON_A_BAR)).toBeNull();
      expect(problem(key, 250.1, 'N/mm', ON_A_BAR)?.unit).toBe('N/mm');
    },
  );

  // 5000 N × 1.2 m = 6000 J; 20 N·m × 1000 turns × 2π = 125 664 J.
  it.each([
    ['energy-to-peak', ON_A_BAR, 6000, 6000.1, 'J'],
    ['energy-to-break', TWISTED, 125_663, 125_664, 'J'],
    // 250 MPa × 30
    ['work-density-to-break', ON_A_BAR, 7500, 7500.1, 'MJ/m³'],
    // 5000 N within 0.001 mm
    ['stiffness', ON_A_BAR, 5_000_000, 5_000_001, 'N/mm'],
    ['travel-at-peak', ON_A_BAR, 1200, 1200.1, 'mm'],
  ])('%s ends where the rated load or the travel ends (%#)', (key, carrier, most, more, unit) => {
    expect(problem(key, most, unit, carrier)).toBeNull();
    expect(problem(key, more, unit, carrier)?.unit).toBe(unit);
    expect(problem(key, -0.1, unit, carrier)?.unit).toBe(unit);
  });
});

describe('a figure of the material', () => {
  it.each([
    ['modulus', 'MPa', 0, 1_500_000, -1, 1_500_001],
    ['hardening-coefficient', 'MPa', 0, 20_000, -1, 20_001],
    ['hardening-exponent', '', 0, 1, -0.01, 1.01],
    ['strain-at-break', 'mm/mm', -1, 30, -1.01, 30.01],
    ['plastic-strain-at-peak', 'mm/mm', -1, 30, -1.01, 30.01],
    ['elongation-after-fracture', 'mm/mm', 0, 10, -0.01, 10.01],
    ['yield-point-extension', 'mm/mm', 0, 10, -0.01, 10.01],
    ['reduction-of-area', 'mm/mm', 0, 1, -0.01, 1.01],
    ['sound-of-the-crack', '', -1e9, 1e9, -1.1e9, 1.1e9],
  ])('%s lies within what such a figure can be', (key, unit, least, most, less, more) => {
    expect([least, most].map((value) => problem(key, value, unit, ON_A_BAR))).toEqual([null, null]);
    expect([less, more, NaN, Infinity].filter((value) => problem(key, value, unit, ON_A_BAR) === null)).toEqual([]);
  });
});
