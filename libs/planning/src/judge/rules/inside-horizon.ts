import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Nothing ends after the horizon. */
export function insideHorizon(one: Case): Breach[] {
  const ends = [
    ...planned(one).map(({ booking }) => ({ id: booking.jobId, endMin: booking.endMin })),
    ...one.plan.visits.map(({ visitId, endMin }) => ({ id: visitId, endMin })),
  ];
  return ends
    .filter(({ endMin }) => endMin > one.problem.horizonMin)
    .map(({ id, endMin }) => breach('inside-horizon', [id], endMin - one.problem.horizonMin));
}
