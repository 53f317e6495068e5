import { resultsThere } from '#libs/bench/src/index.js';
import type { SpecimenLacks } from '#libs/bench/src/index.js';
import type { FinishBody, MissingWhy } from '#libs/contract/src/index.js';
import { fieldProblem, LabError, refuseIfAny } from '#libs/errors/src/index.js';
import { SpecimenRepository } from '#libs/records/src/index.js';
import type { SpecimenEntity } from '#libs/records/src/index.js';
import { missingOf, resultsWanted } from '../results/missing-of.js';
import type { BenchFacts } from './bench-facts.js';
import type { AtWork } from './job-acts.js';

/**
 * Keeps the reasons that were given for results without a figure, and lets nobody finish while one is missing without a reason.
 *
 * @throws LabError `bench/results-missing`
 */
export async function settleMissing(at: AtWork, said: NonNullable<FinishBody['missing']>): Promise<void> {
  const facts = await at.facts();
  refuseUnknown(facts, said);
  const lacks: SpecimenLacks[] = [];
  for (const specimen of facts.specimens) {
    const own = said.filter(({ specimenId }) => specimenId === undefined || specimenId === specimen.id);
    const missingWhy = withReasons(facts, specimen, own);
    if (missingWhy) await new SpecimenRepository(at.manager).change(specimen, { missingWhy });
    const missing = missingOf(facts, { ...specimen, missingWhy: missingWhy ?? specimen.missingWhy });
    lacks.push({ id: specimen.id, label: specimen.label, missing });
  }
  const finding = resultsThere({ reference: at.job.reference, lacks });
  if (finding) throw new LabError(finding.code, finding.sentence, finding.facts);
}

/** The reasons of a specimen with those that are said of results that it lacks; null when that changes nothing. */
export function withReasons(
  facts: Pick<BenchFacts, 'work' | 'results'>,
  specimen: Pick<SpecimenEntity, 'id' | 'fate' | 'missingWhy'>,
  said: readonly MissingWhy[],
): Record<string, string> | null {
  const lacking = missingOf(facts, specimen).map(({ key }) => key);
  const fresh = said.filter(({ key, why }) => lacking.includes(key) && specimen.missingWhy[key] !== why);
  return fresh.length === 0
    ? null
    : { ...specimen.missingWhy, ...Object.fromEntries(fresh.map(({ key, why }) => [key, why])) };
}

/** @throws InvalidInput naming a result that nobody asked for, or a specimen of another job */
export function refuseUnknown(
  { work, specimens }: Pick<BenchFacts, 'work' | 'specimens'>,
  said: NonNullable<FinishBody['missing']>,
): void {
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
