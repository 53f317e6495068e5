import { resultWords } from '#libs/contract/src/index.js';
import type { HistoryPoint, HistoryView } from '#libs/contract/src/index.js';
import type { HistoryRow } from '#libs/records/src/index.js';
import { controlChart, describeSample } from '#libs/reduction/src/index.js';
import type { ChartSignal } from '#libs/reduction/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';

/** Fewer points give limits that say nothing (common practice, no source). */
const LEAST_FOR_CHART = 5;

/** Means of a key over time with their chart, so that a drifting cell is seen. */
export function historyView(method: string, key: string, rows: readonly HistoryRow[]): HistoryView {
  const { label, unit, factor } = resultWords(key, rows[0]?.testType ?? '');
  const points = rows.map((row) => pointOf(row, factor));
  return { ...{ method, key, label, unit }, points, chart: chartOf(points, unit) };
}

function pointOf(
  { at, values, requestReference, jobReference, batchLabel, material, cellTag }: HistoryRow,
  factor: number,
): HistoryPoint {
  const { mean, sd, n } = describeSample(values.map((value) => value * factor));
  return {
    at: at.toISOString(),
    requestReference,
    jobReference,
    batchLabel,
    material,
    cellTag,
    mean,
    standardDeviation: sd,
    n,
  };
}

function chartOf(points: readonly HistoryPoint[], unit: string): HistoryView['chart'] {
  if (points.length < LEAST_FOR_CHART) return null;
  const chart = controlChart(points.map(({ mean }) => mean));
  return {
    centre: chart.centre,
    upper: chart.upper,
    lower: chart.lower,
    movingRangeUpper: chart.rangeUpper,
    signals: chart.signals.map(({ index, rule }) => ({ index, sentence: WORDS[rule](points[index]!, unit) })),
  };
}

const WORDS: Record<ChartSignal['rule'], (point: HistoryPoint, unit: string) => string> = {
  'beyond-limits': (point, unit) =>
    `${named(point, unit)} lies beyond the limits. Look at ${cellOf(point)}, the lot and the method.`,
  'range-beyond-limit': (point, unit) =>
    `${named(point, unit)} differs from the one before by more than the scatter explains.`,
  'run-of-eight': (point, unit) =>
    `With ${named(point, unit)} eight in a row lie on one side of the middle: ${cellOf(point)} or the material may drift.`,
};

function named({ jobReference, mean }: HistoryPoint, unit: string): string {
  return `${jobReference} (${formatNumber(mean)} ${unit})`;
}

function cellOf({ cellTag }: HistoryPoint): string {
  return cellTag ? `cell ${cellTag}` : 'the cell';
}
