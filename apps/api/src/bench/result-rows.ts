import type { TypedFigure } from '#libs/bench/src/index.js';
import { itemsOfTrain } from '#libs/records/src/index.js';
import type { NewResult, SpecimenEntity } from '#libs/records/src/index.js';
import type { BenchFacts } from './bench-facts.js';
import type { AtWork } from './job-acts.js';
import { resultsNeeded, strengthFrom } from './typed-results.js';

/** Figures as rows; each says on which frame and items it was found, because a job may go on with others. */
export function typedRows(
  { job, by }: AtWork,
  { id: specimenId }: SpecimenEntity,
  figures: readonly TypedFigure[],
  why = '',
): NewResult[] {
  const basis = { items: itemsOfTrain(job) };
  return figures.map(({ key, value, unit }) => ({
    ...{
      specimenId,
      jobId: job.id,
      key,
      value,
      unit,
      origin: 'typed' as const,
      basis,
      why: why || null,
      enteredBy: by.id,
    },
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
  const { method, ask } = work;
  const wanted = resultsNeeded(method, ask).some(({ key, typed }) => key === 'peak-stress' && !typed);
  const peak = figures.find(({ key }) => key === 'peak-load')?.value;
  const strength = wanted && peak !== undefined ? strengthFrom(peak, method, ask, specimen.dimensions) : null;
  if (!strength) return [];
  const again = results.some((row) => row.specimenId === specimen.id && row.key === strength.key);
  const basis = { ...strength.basis, items: itemsOfTrain(job) };
  return [
    {
      ...strength,
      basis,
      specimenId: specimen.id,
      jobId: job.id,
      origin: 'computed',
      why: again ? why || null : null,
      enteredBy: by.id,
    },
  ];
}
