import type { Problem } from '#libs/planning/src/index.js';

const METHOD = 'method';
const UNITS_EACH = 2;

/**
 * A published instance as a lab would state it, with the same optimum: frames with a calendar, always open; as many technicians
 * as frames, always there and allowed everything; somebody throughout every job; and for each job a pool of units of its own.
 */
export function asLab(problem: Problem): Problem {
  const always = [{ startMin: 0, endMin: problem.horizonMin }];
  const poolOf = (jobId: string): string[] => Array.from({ length: UNITS_EACH }, (_, at) => `${jobId} unit ${at + 1}`);
  return {
    ...problem,
    frames: problem.frames.map((frame) => ({ ...frame, open: always, down: [] })),
    technicians: problem.frames.map(({ id }) => ({ id: `T ${id}`, shifts: always, authorisations: [METHOD] })),
    items: [
      ...problem.items,
      ...problem.jobs.flatMap(({ id }) => poolOf(id).map((unit) => ({ id: unit, usable: always }))),
    ],
    jobs: problem.jobs.map((job) => ({
      ...job,
      attended: 'throughout',
      authorisation: METHOD,
      candidates: job.candidates.map((one) => ({
        ...one,
        links: [...one.links, { link: 'fixture', pool: poolOf(job.id) }],
      })),
    })),
  };
}
