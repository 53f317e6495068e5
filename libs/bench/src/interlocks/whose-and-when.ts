import type { Finding } from '../finding.js';

/** Only the technician who took a job works on it. */
export function ownJob({
  job,
  byId,
}: {
  job: { reference: string; state: string; technicianId: string | null };
  byId: string;
}): Finding | null {
  if (job.technicianId === byId) return null;
  const whose = job.technicianId === null ? 'Nobody has taken it' : 'Somebody else has taken it';
  return {
    code: 'bench/not-yours',
    sentence: `${job.reference} is not yours to run. ${whose}. Take your next job at the bench.`,
    facts: { state: job.state },
  };
}

/**
 * Some acts belong to some states.
 *
 * @param what e.g. `tags are confirmed`
 */
export function rightMoment(
  { reference, state }: { reference: string; state: string },
  states: readonly string[],
  what: string,
): Finding | null {
  if (states.includes(state)) return null;
  return {
    code: 'bench/wrong-moment',
    sentence: `${reference} is ${state}; ${what} while it is ${states.join(' or ')}.`,
    facts: { state, allowed: states },
  };
}

/** Results of a closed request are not changed any more. */
export function requestOpen({ reference, state }: { reference: string; state: string }): Finding | null {
  if (state !== 'closed') return null;
  return {
    code: 'bench/request-closed',
    sentence: `${reference} is closed; its results are not changed any more.`,
    facts: { state },
  };
}
