import { readFigures, resultsNeeded, unexplainedProblem } from '#libs/bench/src/index.js';
import type { TypedFigure } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import type { JobView, TypedResultsBody } from '#libs/contract/src/index.js';
import { refuseIfAny } from '#libs/errors/src/index.js';
import type { SpecimenEntity } from '#libs/records/src/index.js';
import { resultsWanted } from '../../results/missing-of.js';
import type { BenchFacts } from '../job/bench-facts.js';
import { carrierOf } from './carrier-of.js';

/** The results that have to come from the bench, with their names and units. */
export function resultsNeededOf({ method, ask }: BenchFacts['work']): JobView['resultsNeeded'] {
  const wanted = resultsWanted(method, ask).map(({ key }) => key);
  return resultsNeeded(wanted, method.testType).map(({ key, typed }) => {
    const { label, unit } = resultWords(key, method.testType);
    return { key, label, unit, typed };
  });
}

/**
 * What somebody typed, as it is kept.
 *
 * @throws InvalidInput naming every key, unit and value that cannot be taken, and `why` when a figure is corrected without a reason
 */
export function figuresOf(
  facts: BenchFacts,
  { id, dimensions }: Pick<SpecimenEntity, 'id' | 'dimensions'>,
  { results, why }: TypedResultsBody,
): TypedFigure[] {
  const { work } = facts;
  const typed = resultsNeededOf(work).filter((each) => each.typed);
  const wanted = new Map(typed.map(({ key }) => [key, resultWords(key, work.method.testType)]));
  const { figures, problems } = readFigures(results, wanted, carrierOf(facts, dimensions));
  refuseIfAny(problems);
  const there = facts.results.filter(({ specimenId }) => specimenId === id);
  refuseIfAny([unexplainedProblem(figures, there, why)]);
  return figures;
}
