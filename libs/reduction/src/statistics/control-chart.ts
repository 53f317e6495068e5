import { lagOneCorrelation, meanOf } from './describe-sample.js';

/** Why a value is pointed at: beyond a limit, or the last of a run of eight on one side (ISO 7870-2, from memory). */
export type ChartSignal = {
  readonly index: number;
  readonly rule: 'beyond-limits' | 'range-beyond-limit' | 'run-of-eight';
};

/** Chart of individuals and moving ranges, in the unit of the values. */
export interface ControlChart {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  readonly meanRange: number;
  readonly rangeUpper: number;
  readonly ranges: readonly number[];
  readonly signals: readonly ChartSignal[];
  /** Near 1 when the values drift; then the limits, which lean on neighbours, are too narrow. */
  readonly lagOne: number;
}

/** 3/d₂ and D₄ for ranges of two, d₂ = 2/√π and D₄ = 1 + 3·d₃/d₂ (exact normal theory; tables print 2.660 and 3.267). */
const D2 = 2 / Math.sqrt(Math.PI);
const D3 = Math.sqrt(2 - 4 / Math.PI);
const LIMIT_FACTOR = 3 / D2;
const RANGE_FACTOR = 1 + (3 * D3) / D2;
const RUN = 8;

/**
 * Chart of individual values in time order, so that a drifting cell is seen.
 *
 * @param values at least two
 * @param reference values that the limits come from (a quiet time); all values when left out
 * @throws {RangeError} for fewer than two
 */
export function controlChart(values: readonly number[], reference: readonly number[] = values): ControlChart {
  if (reference.length < 2) throw new RangeError('A control chart needs at least two values.');
  const centre = meanOf(reference);
  const meanRange = meanOf(rangesOf(reference));
  const half = LIMIT_FACTOR * meanRange;
  const ranges = rangesOf(values);
  const rangeUpper = RANGE_FACTOR * meanRange;
  const signals: ChartSignal[] = [
    ...indicesWhere(values, (value) => Math.abs(value - centre) > half).map((index) => ({
      index,
      rule: 'beyond-limits' as const,
    })),
    ...indicesWhere(ranges, (range) => range > rangeUpper).map((index) => ({
      index: index + 1,
      rule: 'range-beyond-limit' as const,
    })),
    ...runs(values, centre).map((index) => ({ index, rule: 'run-of-eight' as const })),
  ];
  return {
    centre,
    lower: centre - half,
    upper: centre + half,
    meanRange,
    rangeUpper,
    ranges,
    signals,
    lagOne: lagOneCorrelation(values),
  };
}

function rangesOf(values: readonly number[]): number[] {
  return values.slice(1).map((value, at) => Math.abs(value - values[at]!));
}

function indicesWhere(values: readonly number[], holds: (value: number) => boolean): number[] {
  return values.flatMap((value, at) => (holds(value) ? [at] : []));
}

/** Indices at which eight values in a row have lain on one side of the centre. */
function runs(values: readonly number[], centre: number): number[] {
  let length = 0;
  return values.flatMap((value, at) => {
    const side = Math.sign(value - centre);
    length = side !== 0 && at > 0 && side === Math.sign(values[at - 1]! - centre) ? length + 1 : Math.abs(side);
    return length >= RUN ? [at] : [];
  });
}
