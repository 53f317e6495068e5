import { LabError } from '#libs/errors/src/index.js';
import type { Candidate, Frame, Job, Problem, Window } from './problem.js';

/** So many flaws are named in a refusal; the rest is counted. */
const MOST_NAMED = 5;

/** One thing that makes a problem unfit for planning. */
export interface Flaw {
  /** Where, e.g. `jobs/J-12/candidates/0`. */
  where: string;
  found: string;
  allowed: string;
}

/** @throws LabError `plan/flawed-problem` naming what is wrong, where and what is allowed; the fact `flaws` lists all of it */
export function refuseFlaws(problem: Problem): void {
  const flaws = checkProblem(problem);
  if (flaws.length === 0) return;
  const named = flaws
    .slice(0, MOST_NAMED)
    .map(({ where, found, allowed }) => `${where} is ${found}; allowed is ${allowed}.`);
  const more = flaws.length > MOST_NAMED ? ` ${flaws.length - MOST_NAMED} more are wrong.` : '';
  throw new LabError(
    'plan/flawed-problem',
    `This cannot be planned: ${named.join(' ')}${more} Correct it and plan again.`,
    {
      flaws,
    },
  );
}

/**
 * Every impossible or missing figure of a problem; an empty list means that it can be planned. A job that no frame can
 * take is not a flaw: the plan lists it as unplaced. Neither is a pin to a frame that cannot take the job, because a frame
 * can fail after somebody pinned a job to it.
 */
export function checkProblem(problem: Problem): Flaw[] {
  const pools = new Set<readonly string[]>(); // those checked already: most candidates share theirs
  return [
    ...wholeMinutes('horizonMin', problem.horizonMin, 1),
    ...problem.frames.flatMap(checkFrame),
    ...problem.items.flatMap((item) => checkWindows(`items/${item.id}/usable`, item.usable ?? [])),
    ...(problem.technicians ?? []).flatMap((who) => checkWindows(`technicians/${who.id}/shifts`, who.shifts)),
    ...problem.jobs.flatMap((job) => checkJob(job, problem, pools)),
    ...checkVisits(problem),
    ...checkChangeover(problem),
    ...twice('frames', problem.frames),
    ...twice('items', problem.items),
    ...twice('technicians', problem.technicians ?? []),
    ...twice('jobs', problem.jobs),
    ...twice('visits', problem.visits),
    ...circle(problem.jobs),
  ];
}

const flaw = (where: string, found: unknown, allowed: string): Flaw => ({ where, found: String(found), allowed });

function wholeMinutes(where: string, found: number, least = 0): Flaw[] {
  return Number.isInteger(found) && found >= least
    ? []
    : [flaw(where, found, `a whole number of minutes from ${least}`)];
}

function checkWindows(where: string, windows: readonly Window[]): Flaw[] {
  let free = -Infinity;
  for (const window of windows) {
    const whole = Number.isInteger(window.startMin) && Number.isInteger(window.endMin);
    if (!whole || window.startMin >= window.endMin || window.startMin <= free) {
      return [
        flaw(where, `[${window.startMin}, ${window.endMin})`, 'windows of whole minutes, sorted, apart, not empty'),
      ];
    }
    free = window.endMin;
  }
  return [];
}

function checkFrame(frame: Frame): Flaw[] {
  return [
    ...checkWindows(`frames/${frame.id}/open`, frame.open ?? []),
    ...checkWindows(`frames/${frame.id}/down`, frame.down ?? []),
    ...wholeMinutes(`frames/${frame.id}/warmUpMin`, frame.warmUpMin),
    ...wholeMinutes(`frames/${frame.id}/warmUpAfterMin`, frame.warmUpAfterMin),
  ];
}

function checkJob(job: Job, problem: Problem, pools: Set<readonly string[]>): Flaw[] {
  const where = `jobs/${job.id}`;
  const jobIds = idsOf(problem.jobs);
  const flaws = [
    ...(Number.isInteger(job.releaseMin)
      ? []
      : [flaw(`${where}/releaseMin`, job.releaseMin, 'a whole number of minutes')]),
    ...(Number.isInteger(job.dueMin) ? [] : [flaw(`${where}/dueMin`, job.dueMin, 'a whole number of minutes')]),
    ...(job.weight >= 0 && Number.isFinite(job.weight) ? [] : [flaw(`${where}/weight`, job.weight, '0 or more')]),
    ...job.candidates.flatMap((candidate, at) =>
      checkCandidate(candidate, `${where}/candidates/${at}`, problem, pools),
    ),
    ...job.after.filter((id) => !jobIds.has(id)).map((id) => flaw(`${where}/after`, id, 'a job of this problem')),
  ];
  const frames = idsOf(problem.frames);
  for (const place of [job.pin, job.running]) {
    if (place && !frames.has(place.frameId))
      flaws.push(flaw(`${where}/frameId`, place.frameId, 'a frame of this problem'));
  }
  const pinnedMin = job.pin?.startMin ?? 0;
  if (!Number.isInteger(pinnedMin)) flaws.push(flaw(`${where}/pin/startMin`, pinnedMin, 'a whole number of minutes'));
  if (job.running && !(Number.isInteger(job.running.endMin) && job.running.endMin >= 0))
    flaws.push(flaw(`${where}/running/endMin`, job.running.endMin, 'a whole number of minutes from 0'));
  return flaws;
}

function checkCandidate(candidate: Candidate, where: string, problem: Problem, pools: Set<readonly string[]>): Flaw[] {
  const flaws = [
    ...wholeMinutes(`${where}/perSpecimenMin`, candidate.perSpecimenMin),
    ...wholeMinutes(`${where}/specimens`, candidate.specimens, 1),
  ];
  if (!idsOf(problem.frames).has(candidate.frameId)) {
    flaws.push(flaw(`${where}/frameId`, candidate.frameId, 'a frame of this problem'));
  }
  const items = idsOf(problem.items);
  for (const { link, pool } of candidate.links) {
    if (pools.has(pool)) continue;
    pools.add(pool);
    const strange = pool.find((id) => !items.has(id));
    if (strange !== undefined) flaws.push(flaw(`${where}/links/${link}`, strange, 'an item of this problem'));
    if (pool.length === 0) flaws.push(flaw(`${where}/links/${link}`, 'an empty pool', 'at least one unit'));
  }
  return flaws;
}

function checkVisits(problem: Problem): Flaw[] {
  const items = idsOf(problem.items);
  return problem.visits.flatMap((visit) => [
    ...wholeMinutes(`visits/${visit.id}/durationMin`, visit.durationMin, 1),
    ...wholeMinutes(`visits/${visit.id}/earliestMin`, visit.earliestMin),
    ...(items.has(visit.itemId) ? [] : [flaw(`visits/${visit.id}/itemId`, visit.itemId, 'an item of this problem')]),
  ]);
}

function checkChangeover({ changeover, frames }: Problem): Flaw[] {
  const flaws = Object.entries(changeover.byLinkMin).flatMap(([link, min]) =>
    wholeMinutes(`changeover/byLinkMin/${link}`, min),
  );
  if (!(changeover.rampCPerMin > 0)) flaws.push(flaw('changeover/rampCPerMin', changeover.rampCPerMin, 'above 0'));
  const size = changeover.families?.families.length ?? 0;
  for (const frame of changeover.families ? frames : []) {
    const matrix = changeover.families?.byFrame[frame.id];
    if (matrix?.length !== size || matrix.some((row) => row.length !== size)) {
      flaws.push(flaw(`changeover/families/${frame.id}`, 'a matrix of another size', `${size} × ${size} minutes`));
    }
  }
  return flaws;
}

const idCache = new WeakMap<readonly { id: string }[], Set<string>>();

/** Looked up once per list, not once per job. */
function idsOf(list: readonly { id: string }[]): Set<string> {
  let ids = idCache.get(list);
  if (!ids) idCache.set(list, (ids = new Set(list.map(({ id }) => id))));
  return ids;
}

function twice(where: string, list: readonly { id: string }[]): Flaw[] {
  const seen = new Set<string>();
  return list.filter(({ id }) => seen.size === seen.add(id).size).map(({ id }) => flaw(where, id, 'each id once'));
}

/** Jobs that wait for each other in a circle could never start. */
function circle(jobs: readonly Job[]): Flaw[] {
  const open = new Map(jobs.map((job) => [job.id, new Set(job.after)]));
  let free: string[];
  while (
    (free = [...open].filter(([, after]) => [...after].every((id) => !open.has(id))).map(([id]) => id)).length > 0
  ) {
    for (const id of free) open.delete(id);
  }
  return open.size === 0 ? [] : [flaw('jobs/after', [...open.keys()].join(', '), 'an order without a circle')];
}
