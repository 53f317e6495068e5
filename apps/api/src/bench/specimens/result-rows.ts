import { isMeasured, resultsNeeded, STRENGTH, strengthFrom } from '#libs/bench/src/index.js';
import type { TypedFigure } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import { itemsOfTrain } from '#libs/records/src/index.js';
import type { NewResult, SpecimenEntity } from '#libs/records/src/index.js';
import { resultsWanted } from '../../results/missing-of.js';
import type { BenchFacts } from '../job/bench-facts.js';
import type { AtWork } from '../job/job-acts.js';
import { loadPerStress } from './carrier-of.js';
import { dimensionKeys, measuredGeometry } from './dimensions-of.js';

/** Figures as rows; each says on which frame and items it was found, because a job may go on with others. */
export function typedRows(
  { job, by }: AtWork,
  { id: specimenId }: SpecimenEntity,
  figures: readonly TypedFigure[],
  why = '',
): NewResult[] {
  const basis = { items: itemsOfTrain(job) };
  return figures.map(({ key, value, unit }) => ({
    ...{ specimenId, jobId: job.id, key, value, unit, origin: 'typed' as const },
    ...{ basis, why: why || null, enteredBy: by.id },
  }));
}

/** The strength that follows from the peak, when it is wanted and the lengths are there. */
export function computedRows(
  { job, by }: AtWork,
  { work, results }: BenchFacts,
  specimen: SpecimenEntity,
  figures: readonly Pick<TypedFigure, 'key' | 'value'>[],
  why = '',
): NewResult[] {
  const strength = strengthOf(work, specimen, figures);
  if (!strength) return [];
  const again = results.some((row) => row.specimenId === specimen.id && row.key === STRENGTH);
  return [
    {
      ...{ specimenId: specimen.id, jobId: job.id, key: STRENGTH, value: strength.value, origin: 'computed' },
      unit: resultWords(STRENGTH, work.method.testType).unit,
      basis: { ...strength.basis, items: itemsOfTrain(job) },
      why: again ? why || null : null,
      enteredBy: by.id,
    },
  ];
}

function strengthOf(
  work: BenchFacts['work'],
  { dimensions }: Pick<SpecimenEntity, 'dimensions'>,
  figures: readonly Pick<TypedFigure, 'key' | 'value'>[],
) {
  const { method, ask } = work;
  const wanted = resultsWanted(method, ask).map(({ key }) => key);
  const isComputed = resultsNeeded(wanted, method.testType).some(({ key, typed }) => key === STRENGTH && !typed);
  const peak = figures.find(({ key }) => key === 'peak-load')?.value;
  if (!isComputed || peak === undefined) return null;
  return strengthFrom(peak, {
    testType: method.testType,
    isMeasured: isMeasured(dimensionKeys(work), dimensions),
    perStress: loadPerStress(measuredGeometry(ask, dimensions), method),
  });
}
