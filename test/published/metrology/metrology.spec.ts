import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { FORCE_CLASSES, extensionClassesOf } from '#libs/accuracy/src/index.js';
import { evaluateForce } from '#libs/metrology/src/index.js';
import { toInternal } from '#libs/units/src/index.js';
import type { ForceReadings } from '#libs/metrology/src/index.js';
import type { Unit } from '#libs/units/src/index.js';

// Each row of the tables names its source and how sure it is; the standards themselves are not open.
type Row = Record<string, string>;

function read(file: string): Row[] {
  return parse(readFileSync(new URL(file, import.meta.url)), { columns: true });
}

const numberIn = (row: Row, column: string) => Number(row[column]);
const µm = (value: number) => value / 1000;

describe('ISO 7500-1 table 2', () => {
  it.each(read('iso7500-classes.csv'))('class $class', (row) => {
    const limits = FORCE_CLASSES.find(({ className }) => className === row['class'])!;
    expect(limits).toMatchObject({
      indicationPct: numberIn(row, 'q_indication_percent_plusminus'),
      repeatabilityPct: numberIn(row, 'b_repeatability_percent'),
      reversibilityPct: numberIn(row, 'v_reversibility_percent_plusminus'),
      zeroPct: numberIn(row, 'f0_zero_percent_plusminus'),
      resolutionPct: numberIn(row, 'a_relative_resolution_percent'),
      lowestInResolutions: numberIn(row, 'lower_limit_multiple_of_resolution'),
    });
  });

  it('is one table: the relative resolution is that of the lowest force', () => {
    for (const { resolutionPct, lowestInResolutions } of FORCE_CLASSES) {
      expect(lowestInResolutions).toBe(Math.ceil(100 / resolutionPct));
    }
  });
});

// Constructed with the formulas of ISO 7500-1: a 100 kN range, r = 5 N, residual 20 N, the indicated force held.
describe('a verification of a 100 kN range, step by step', () => {
  const rows = read('iso7500-worked-example.csv');

  const readingsIn = (unit: Unit): ForceReadings => {
    // The same readings, written in another unit and brought back: what is kept is always N.
    const kept = (kN: number | string) => toInternal((Number(kN) * 1000) / toInternal(1, unit), unit);
    return {
      direction: 'tension',
      unit: 'N',
      capacity: kept(100),
      resolution: kept(0.005),
      zeroResidual: kept(0.02),
      held: 'indicated',
      steps: rows.map((row) => ({
        nominal: kept(row['indicated_kN']!),
        runs: [1, 2, 3].map((run) => kept(row[`true_run${run}_kN`]!)),
        falling: kept(row['true_decreasing_kN']!),
      })),
    };
  };

  const outcome = evaluateForce(readingsIn('kN'));

  it.each(rows.map((row, index) => ({ row, index })))('at $row.indicated_kN kN', ({ row, index }) => {
    const step = outcome.steps[index]!;
    const TO_4_DECIMALS = 4;
    expect(step.meanOfRuns / 1000).toBeCloseTo(numberIn(row, 'mean_true_kN'), 5);
    expect(step.indicationPct).toBeCloseTo(numberIn(row, 'q_percent'), TO_4_DECIMALS);
    expect(step.repeatabilityPct).toBeCloseTo(numberIn(row, 'b_percent'), TO_4_DECIMALS);
    expect(step.reversibilityPct).toBeCloseTo(numberIn(row, 'v_percent'), TO_4_DECIMALS);
    expect(step.zeroPct).toBeCloseTo(numberIn(row, 'f0_percent'), TO_4_DECIMALS);
    expect(step.resolutionPct).toBeCloseTo(numberIn(row, 'a_percent'), TO_4_DECIMALS);
    expect(step.className).toBe(row['class_at_step']);
  });

  it('gives class 0.5 from 5 to 100 kN and class 1 from 1 to 100 kN', () => {
    expect(outcome.ranges).toEqual([
      { direction: 'tension', className: '0.5', from: 5000, to: 100_000, unit: 'N' },
      { direction: 'tension', className: '1', from: 1000, to: 100_000, unit: 'N' },
    ]);
    expect(outcome.notes).toEqual([]);
  });

  it('could by resolution alone be class 0.5 from 2 kN and class 1 from 1 kN; at 2 kN b costs class 0.5', () => {
    const resolution = 5;
    const lowest = FORCE_CLASSES.map(({ lowestInResolutions }) => lowestInResolutions * resolution);
    expect(lowest).toEqual([2000, 1000, 500, 335]);
    expect(outcome.steps[1]!.heldBackBy.map(({ criterion }) => criterion)).toEqual(['b']);
  });

  it.each<Unit>(['N', 'kN', 'lbf', 'kgf', 'kip'])('is the same when it is entered in %s', (unit) => {
    const entered = evaluateForce(readingsIn(unit));
    expect(entered.steps.map(({ className }) => className)).toEqual(outcome.steps.map(({ className }) => className));
    expect(entered.ranges.map(({ className, from }) => [className, Math.round(from)])).toEqual([
      ['0.5', 5000],
      ['1', 1000],
    ]);
  });
});

describe('ISO 9513 table 2', () => {
  it.each(read('iso9513-classes.csv'))('class $class', (row) => {
    const limits = extensionClassesOf('ISO 9513').find(({ className }) => className === row['class'])!;
    expect(limits.gaugeLengthPct).toBe(numberIn(row, 'gauge_length_error_percent_plusminus'));
    expect(limits.resolutionPct).toBe(numberIn(row, 'resolution_percent_of_reading'));
    expect(limits.resolutionMm).toBeCloseTo(µm(numberIn(row, 'resolution_um')), 12);
    expect(limits.biasPct).toBe(numberIn(row, 'bias_percent_plusminus'));
    expect(limits.biasMm).toBeCloseTo(µm(numberIn(row, 'bias_um_plusminus')), 12);
    expect(limits.biasMm! / (limits.biasPct / 100)).toBeCloseTo(numberIn(row, 'crossover_mm'), 12);
  });
});

describe('ASTM E83 table 1', () => {
  it.each(read('e83-classes.csv'))('class $class', (row) => {
    const limits = extensionClassesOf('ASTM E83').find(({ className }) => className === row['class'])!;
    expect(limits.biasStrain).toBe(numberIn(row, 'strain_error_fixed'));
    expect(limits.biasPct).toBe(numberIn(row, 'strain_error_percent_of_strain'));
    expect(limits.gaugeLengthPct).toBe(numberIn(row, 'gauge_length_error_percent'));
    expect(limits.resolutionStrain).toBeCloseTo(numberIn(row, 'resolution_fixed_strain'), 12);
    expect(limits.resolutionPct).toBe(numberIn(row, 'resolution_percent'));
    expect(limits.biasStrain! / (limits.biasPct / 100)).toBeCloseTo(numberIn(row, 'crossover_strain'), 12);
  });
});
