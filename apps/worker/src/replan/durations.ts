import type { Method } from '#libs/matching/src/index.js';
import type { PlanFacts } from '#libs/records/src/index.js';

/** A method's own figure counts as so many finished jobs, so that few data move it little. */
const WORTH_OF_DEFAULT = 5;
/** Older work says less about how the lab works now: only so many finished jobs are looked at. */
const NEWEST = 40;

/**
 * Minutes per specimen that a method is expected to take: the mean of the newest finished jobs, drawn towards the
 * method's own figure while there are few (an empirical-Bayes mean with a fixed prior weight).
 */
export function perSpecimenMin(method: Method, durations: PlanFacts['durations']): number {
  const own = durations
    .filter(({ methodCode, specimens }) => methodCode === method.id && specimens > 0)
    .slice(0, NEWEST);
  const sum = own.reduce((total, { workMin, specimens }) => total + workMin / specimens, 0);
  const mean = (sum + method.defaultMinPerSpecimen * WORTH_OF_DEFAULT) / (own.length + WORTH_OF_DEFAULT);
  return Math.max(1, Math.round(mean));
}
