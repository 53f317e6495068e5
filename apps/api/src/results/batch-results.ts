import { resultWords } from '#libs/contract/src/index.js';
import type { BatchResults, ConformityAsk, StatisticsView } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import { describeSample, stateConformity, testGrubbs, toleranceBound } from '#libs/reduction/src/index.js';
import type { Verdict } from '#libs/reduction/src/index.js';
import { expandedOfOne, uncertaintyView } from './uncertainty-view.js';
import type { Doubts } from './uncertainty-view.js';

/** From so many specimens on a bound for an allowable is worth stating. */
const LEAST_FOR_BOUND = 3;
/** B-basis: 90 % of the population lies above it with 95 % confidence (CMH-17). */
const BOUND = { coverage: 0.9, confidence: 0.95 } as const;

/** One figure of one specimen, the newest revision of its key, in the unit that reduction gives. */
export interface KeptResult {
  specimenId: string;
  key: string;
  value: number;
  revision: number;
  flags: string[];
}

interface Batch {
  id: string;
  label: string;
  method: Method;
  material: string | null;
  specimens: readonly {
    id: string;
    label: string;
    fate: string;
    invalidWhy: string | null;
    missing: readonly { key: string; label: string; why: string | null }[];
  }[];
  results: readonly KeptResult[];
  conformity: ConformityAsk | null;
  doubts: Doubts;
}

/** All figures of a batch with their statistics. Invalid specimens are shown and not counted; none is ever left out of the table. */
export function batchResults(batch: Batch): BatchResults {
  const keys = orderedKeys(batch);
  const columns = keys.map((key) => ({ key, ...wordsOf(key, batch.method), ...reportingOf(key, batch.method) }));
  const statistics = keys.flatMap((key) => statisticsOf(key, batch) ?? []);
  return {
    batchId: batch.id,
    label: batch.label,
    method: batch.method.designation,
    material: batch.material,
    columns,
    rows: batch.specimens.map((specimen) => ({
      specimenId: specimen.id,
      label: specimen.label,
      fate: specimen.fate,
      invalidWhy: specimen.invalidWhy,
      missing: specimen.missing.map(({ key, label, why }) => ({ key, label, why })),
      values: Object.fromEntries(keys.map((key) => [key, shown(find(batch, specimen.id, key), batch.method)])),
    })),
    statistics,
    conformity: conformityOf(batch, statistics),
  };
}

/** In the order of the method, then whatever else was measured. */
function orderedKeys({ method, results }: Batch): string[] {
  const present = new Set(results.map(({ key }) => key));
  return [...new Set([...method.results, ...present])].filter((key) => present.has(key));
}

function wordsOf(key: string, { testType }: Method): { label: string; unit: string } {
  const { label, unit } = resultWords(key, testType);
  return { label, unit };
}

function reportingOf(key: string, { reportSteps, testType }: Method): { step: number | null; digits: number | null } {
  const rule = reportSteps[key.split('@')[0]!];
  if (!rule) return { step: null, digits: null };
  if ('significant' in rule) return { step: null, digits: rule.significant };
  return { step: rule.step * resultWords(key, testType).factor, digits: null };
}

function find({ results }: Batch, specimenId: string, key: string): KeptResult | undefined {
  return results.find((result) => result.specimenId === specimenId && result.key === key);
}

function shown(result: KeptResult | undefined, { testType }: Method): BatchResults['rows'][number]['values'][string] {
  if (!result) return null;
  return {
    value: result.value * resultWords(result.key, testType).factor,
    flags: result.flags,
    revision: result.revision,
  };
}

function statisticsOf(key: string, batch: Batch): StatisticsView | null {
  const counted = batch.specimens.filter(({ fate }) => fate === 'tested');
  const found = counted.flatMap(({ id, label }) => {
    const value = shown(find(batch, id, key), batch.method);
    return value ? [{ label, value: value.value }] : [];
  });
  if (found.length === 0) return null;
  const values = found.map(({ value }) => value);
  const figures = describeSample(values);
  const grubbs = testGrubbs(values);
  return {
    key,
    ...wordsOf(key, batch.method),
    n: figures.n,
    mean: figures.mean,
    standardDeviation: figures.sd,
    cvPct: figures.cvPct,
    ci95: figures.meanInterval && { low: figures.meanInterval.from, high: figures.meanInterval.to },
    min: figures.min,
    max: figures.max,
    median: figures.median,
    possibleOutliers: grubbs?.isPossibleOutlier ? [found[grubbs.suspectIndex]!.label] : [],
    toleranceBound: boundOf(values, wordsOf(key, batch.method).unit),
    uncertainty: uncertaintyView(key, figures, batch.method, batch.doubts),
  };
}

function boundOf(values: readonly number[], unit: string): StatisticsView['toleranceBound'] {
  const found = values.length < LEAST_FOR_BOUND ? null : toleranceBound(values, BOUND.coverage, BOUND.confidence);
  if (!found) return null;
  const sentence = `90 % of such specimens lie above ${found.bound.toPrecision(4)} ${unit} with 95 % confidence (k = ${found.k.toFixed(3)}, normal distribution).`;
  return { low: found.bound, k: found.k, sentence };
}

const STATEMENTS: Record<Verdict, NonNullable<BatchResults['conformity']>['statement']> = {
  conforms: 'conforms',
  'does-not-conform': 'does not conform',
  undecided: 'cannot be stated',
};

/** By the rule agreed at acceptance. Limits in another unit, or guarded without an uncertainty, it cannot be stated. */
function conformityOf(batch: Batch, statistics: readonly StatisticsView[]): BatchResults['conformity'] {
  const ask = batch.conformity;
  const of = ask && statistics.find(({ key }) => key === ask.resultKey);
  if (!ask || !of) return null;
  const values = batch.specimens
    .filter(({ fate }) => fate === 'tested')
    .flatMap(({ id }) => shown(find(batch, id, ask.resultKey), batch.method)?.value ?? []);
  const rule = ask.rule === 'simple' ? 'simple acceptance' : 'guarded by the expanded uncertainty U (k = 2)';
  const limits = [ask.lower === null ? [] : `at least ${ask.lower}`, ask.upper === null ? [] : `at most ${ask.upper}`]
    .flat()
    .join(' and ');
  const detail = `${of.label} of ${ask.of === 'mean' ? 'the mean' : 'each specimen'}: ${limits} ${ask.unit}.`;
  const unstated = (why: string): BatchResults['conformity'] => ({
    ...{ specification: ask.specification, statement: 'cannot be stated', rule },
    detail: `${detail} ${why}`,
  });
  if (ask.unit !== of.unit) return unstated(`The limits are not in the unit of the result, ${of.unit}.`);
  const expanded =
    ask.of === 'mean'
      ? (of.uncertainty?.expanded ?? null)
      : expandedOfOne(ask.resultKey, of.mean, batch.method, batch.doubts);
  if (ask.rule === 'guarded' && expanded === null) return unstated('No uncertainty could be computed.');
  const { verdict } = stateConformity(
    values,
    {
      ...(ask.lower === null ? {} : { lower: ask.lower }),
      ...(ask.upper === null ? {} : { upper: ask.upper }),
      of: ask.of,
      rule: ask.rule,
    },
    expanded,
  );
  const guard =
    ask.rule === 'guarded'
      ? ` U of ${ask.of === 'mean' ? 'the mean' : 'one'}: ${expanded!.toPrecision(2)} ${of.unit}.`
      : '';
  return { specification: ask.specification, statement: STATEMENTS[verdict], rule, detail: detail + guard };
}
