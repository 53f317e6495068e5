import type { DurationSpread } from './promise-dates.js';

/** A finished job: what was planned for it and what it took, min. */
export interface FinishedWork {
  plannedMin: number;
  tookMin: number;
}

/** What is assumed before anything was learned (common practice, no source): as planned in the middle, a quarter more or less. */
export const USUAL_SPREAD: DurationSpread = { logMean: 0, logSd: 0.25 };
/** So many finished jobs weigh as much as the assumption. */
const WORTH_OF_ASSUMPTION = 5;

/**
 * Mean and spread of log(took ÷ planned), drawn towards the assumption while the data are few (conjugate normal with a fixed
 * weight of the prior; the spread by the same weights on the squares).
 *
 * @param finished jobs of one method; those without a duration above 0 are passed over
 */
export function learnSpread(finished: readonly FinishedWork[], assumed: DurationSpread = USUAL_SPREAD): DurationSpread {
  const logs = finished
    .filter(({ plannedMin, tookMin }) => plannedMin > 0 && tookMin > 0)
    .map(({ plannedMin, tookMin }) => Math.log(tookMin / plannedMin));
  const weight = logs.length + WORTH_OF_ASSUMPTION;
  const logMean = (logs.reduce((sum, log) => sum + log, 0) + WORTH_OF_ASSUMPTION * assumed.logMean) / weight;
  const squares = logs.reduce((sum, log) => sum + (log - logMean) ** 2, 0);
  const prior = assumed.logSd ** 2 + (assumed.logMean - logMean) ** 2;
  return { logMean, logSd: Math.sqrt((squares + WORTH_OF_ASSUMPTION * prior) / weight) };
}
