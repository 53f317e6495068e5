import { missingResults } from '#libs/bench/src/index.js';
import type { MissingResult } from '#libs/bench/src/index.js';
import { resultWords } from '#libs/contract/src/index.js';
import type { Ask, Method } from '#libs/matching/src/index.js';
import { curveLacksOf } from '#libs/records/src/index.js';
import type { ResultEntity, SpecimenEntity } from '#libs/records/src/index.js';

/** What was asked for, and what was found so far. */
export interface Found {
  work: { method: Method; ask: Ask };
  results: readonly Pick<ResultEntity, 'specimenId' | 'key' | 'basis'>[];
}

/** The results that were asked for, or the usual ones when nobody chose. */
export function resultsWanted({ usualResults, testType }: Method, { results }: Ask): { key: string; label: string }[] {
  const wanted = results.length > 0 ? results : usualResults;
  return wanted.map((key) => ({ key, label: resultWords(key, testType).label }));
}

/** The results that were asked for and that a specimen has no figure of. */
export function missingOf(
  { work, results }: Found,
  { id, fate, missingWhy }: Pick<SpecimenEntity, 'id' | 'fate' | 'missingWhy'>,
): MissingResult[] {
  const own = results.filter(({ specimenId }) => specimenId === id);
  return missingResults(resultsWanted(work.method, work.ask), {
    ...{ fate, missingWhy, found: own.map(({ key }) => key) },
    curveLacks: own.flatMap(curveLacksOf),
  });
}
