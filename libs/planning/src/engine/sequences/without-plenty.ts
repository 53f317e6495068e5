import type { Candidate, Frame, Item, Job, LinkNeed, Problem, Window } from '../../problem.js';

/**
 * The problem without what can never run short: a roster that has somebody for every frame at any time, calendars that never
 * close, and links of whose units each job has its own. Any sequences of the jobs then take as long with it as without, when
 * they are placed frame by frame: each frame finds a technician whom no frame before it has booked.
 */
export function withoutPlenty(problem: Problem): Problem {
  const { frames, jobs } = problem;
  const isPlentiful = plentifulLinks(problem);
  return {
    ...problem,
    technicians: hasSomebodyForEachFrame(problem) ? null : problem.technicians,
    frames: frames.map((frame) => (isNeverClosed(frame, problem.horizonMin) ? { ...frame, open: null } : frame)),
    jobs: jobs.map((job) => ({
      ...job,
      candidates: job.candidates.map((candidate) => ({
        ...candidate,
        links: candidate.links.filter((need) => !isPlentiful(need, candidate)),
      })),
    })),
  };
}

function hasSomebodyForEachFrame({ technicians, frames, jobs, horizonMin }: Problem): boolean {
  const needed = new Set(jobs.flatMap(({ authorisation }) => authorisation ?? []));
  const always = (technicians ?? []).filter(
    ({ shifts, authorisations }) =>
      coversAll(shifts, horizonMin) && [...needed].every((one) => authorisations.includes(one)),
  );
  return always.length >= frames.length;
}

const isNeverClosed = ({ open, down = [] }: Frame, horizonMin: number): boolean =>
  down.length === 0 && (open === null || coversAll(open, horizonMin));

const coversAll = (windows: readonly Window[], horizonMin: number): boolean =>
  windows.some(({ startMin, endMin }) => startMin <= 0 && endMin >= horizonMin);

/** A link is plentiful that takes no time to fit, and whose units are always in force and no other job's. */
function plentifulLinks({
  items,
  jobs,
  changeover,
  horizonMin,
}: Problem): (need: LinkNeed, candidate: Candidate) => boolean {
  const alwaysInForce = new Set(items.filter((item) => isInForce(item, horizonMin)).map(({ id }) => id));
  const shared = unitsOfSeveral(jobs);
  const isFree = (link: string): boolean =>
    !changeover.byLinkMin[link] && (changeover.checkMin === 0 || !changeover.checkedLinks.includes(link));
  return ({ link, pool }, { links }) =>
    isFree(link) && pool.length >= links.length && pool.every((unit) => alwaysInForce.has(unit) && !shared.has(unit));
}

const isInForce = ({ usable }: Item, horizonMin: number): boolean => usable === null || coversAll(usable, horizonMin);

/** Units that more than one job could use. */
function unitsOfSeveral(jobs: readonly Job[]): Set<string> {
  const user = new Map<string, Job>();
  const shared = new Set<string>();
  for (const job of jobs) {
    for (const unit of job.candidates.flatMap(({ links }) => links.flatMap(({ pool }) => pool))) {
      if ((user.get(unit) ?? job) !== job) shared.add(unit);
      user.set(unit, job);
    }
  }
  return shared;
}
