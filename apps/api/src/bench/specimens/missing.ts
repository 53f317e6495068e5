import type { SpecimenLacks } from '#libs/bench/src/index.js';
import type { FinishBody, MissingWhy } from '#libs/contract/src/index.js';
import { fieldProblem, refuseIfAny } from '#libs/errors/src/index.js';
import type { SpecimenEntity } from '#libs/records/src/index.js';
import { missingOf, resultsWanted } from '../../results/missing-of.js';
import type { BenchFacts } from '../job/bench-facts.js';

type Said = NonNullable<FinishBody['missing']>;

/** Every specimen with the results that it lacks. */
export function lacksOf(facts: Pick<BenchFacts, 'work' | 'results' | 'specimens'>): SpecimenLacks[] {
  return facts.specimens.map((specimen) => ({
    ...{ id: specimen.id, label: specimen.label },
    missing: missingOf(facts, specimen),
  }));
}

/** The reasons of a specimen with those that are said of results that it lacks; null when that changes nothing. */
export function withReasons(
  facts: Pick<BenchFacts, 'work' | 'results'>,
  specimen: Pick<SpecimenEntity, 'id' | 'fate' | 'missingWhy'>,
  said: readonly MissingWhy[],
): Record<string, string> | null {
  const lacking = missingOf(facts, specimen).map(({ key }) => key);
  const fresh = said.filter(({ key, why }) => lacking.includes(key) && specimen.missingWhy[key] !== why);
  if (fresh.length === 0) return null;
  return { ...specimen.missingWhy, ...Object.fromEntries(fresh.map(({ key, why }) => [key, why])) };
}

/** @throws InvalidInput naming a result that nobody asked for, or a specimen of another job */
export function refuseUnknown({ work, specimens }: Pick<BenchFacts, 'work' | 'specimens'>, said: Said): void {
  const keys = resultsWanted(work.method, work.ask).map(({ key }) => key);
  refuseIfAny(
    said.flatMap(({ key, specimenId }, at) => [
      keys.includes(key)
        ? null
        : fieldProblem({ field: `missing[${at}].key`, found: key, allowed: `one of ${keys.join(', ')}`, unit: '' }),
      specimenId === undefined || specimens.some(({ id }) => id === specimenId)
        ? null
        : fieldProblem({
            ...{ field: `missing[${at}].specimenId`, found: specimenId, unit: '' },
            allowed: 'a specimen of this job',
          }),
    ]),
  );
}
