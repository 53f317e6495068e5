import { resultDefinition, resultWords } from '#libs/contract/src/index.js';
import type { BatchResults, ConformityAsk, StatisticsView } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import { describeSample } from '#libs/reduction/src/index.js';
import { populationBound } from './population-bound.js';
import { possibleOutliers } from './possible-outliers.js';
import { stateConformityOf } from './state-conformity-of.js';
import type { StrainReads } from './strain-doubt.js';
import { expandedOfOne, uncertaintyView } from './uncertainty-view.js';
import type { Doubts } from './uncertainty-view.js';

/** One figure of one specimen, the newest revision of its key, in the unit that reduction gives. */
export interface KeptResult {
  specimenId: string;
  key: string;
  value: number;
  revision: number;
  flags: string[];
  reads: StrainReads | null;
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
  const columns = keys.map((key) => ({
    ...{ key, ...wordsOf(key, batch.method), ...reportingOf(key, batch.method) },
    ...definitionOf(key, batch),
  }));
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

function definitionOf(key: string, { method, doubts: { geometry } }: Batch): { definition?: string } {
  const definition = resultDefinition(key, { method, geometry });
  return definition === null ? {} : { definition };
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
    possibleOutliers: possibleOutliers(found, reportingOf(key, batch.method).step),
    toleranceBound: populationBound(values, wordsOf(key, batch.method).unit),
    uncertainty: uncertaintyView({ key, reads: readsOf(key, batch) }, figures, batch.method, batch.doubts),
  };
}

/** What a result reads of the strain: the specimen that asks most of the extensometer stands for all. */
function readsOf(key: string, { results }: Batch): StrainReads | null {
  const spanOf = ({ slope, at }: StrainReads) => (slope ? slope.to - slope.from : (at ?? Infinity));
  const all = results.flatMap((result) => (result.key === key && result.reads ? [result.reads] : []));
  return all.sort((one, other) => spanOf(one) - spanOf(other))[0] ?? null;
}

/** What was agreed, held against what was found; null where nothing was agreed, or nothing of it was measured. */
function conformityOf(batch: Batch, statistics: readonly StatisticsView[]): BatchResults['conformity'] {
  const ask = batch.conformity;
  const of = ask && statistics.find(({ key }) => key === ask.resultKey);
  if (!ask || !of) return null;
  const specimens = batch.specimens
    .filter(({ fate }) => fate === 'tested')
    .map(({ id, label }) => ({ label, value: shown(find(batch, id, ask.resultKey), batch.method)?.value ?? null }));
  const expanded =
    ask.of === 'mean'
      ? (of.uncertainty?.expanded ?? null)
      : expandedOfOne(
          { key: ask.resultKey, value: of.mean, reads: readsOf(ask.resultKey, batch) },
          batch.method,
          batch.doubts,
        );
  const reporting = reportingOf(ask.resultKey, batch.method);
  const stated = stateConformityOf(ask, { statistics: of, specimens, reporting, expanded });
  return { ...stated, detail: [stated.detail, ...remarksOn(ask.resultKey, batch)].join(' ') };
}

/** What was flagged on the figures that a statement rests on, in words, each with its specimens. */
function remarksOn(key: string, batch: Batch): string[] {
  const labels = new Map<string, string[]>();
  for (const { id, label, fate } of batch.specimens) {
    const flags = fate === 'tested' ? (find(batch, id, key)?.flags ?? []) : [];
    for (const flag of flags) labels.set(flag, [...(labels.get(flag) ?? []), label]);
  }
  return [...labels].map(([flag, of]) => `Remark on ${of.join(', ')}: ${flag}`);
}
