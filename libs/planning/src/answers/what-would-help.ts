import type { Plan } from '../plan.js';
import type { Problem, Window } from '../problem.js';
import { poolLoads } from './pool-loads.js';

/** One change of the lab that could be made. */
export type Change =
  | { kind: 'one-more-unit'; link: string; likeUnit: string }
  | { kind: 'extra-shift'; frameId: string; shift: Window }
  | { kind: 'earlier-visit'; visitId: string };

/** A change and what a new plan with it would save. */
export interface Help {
  change: Change;
  /** Weighted minutes of lateness that it removes; negative when it made things worse. */
  savesWeightedLateMin: number;
  lateJobsFewer: number;
}

/** Changes worth trying: one more unit of each pool that binds, an extra shift on each frame with late work, each visit as early as can be. */
export function changesToTry(problem: Problem, plan: Plan, extraShifts: readonly Window[]): Change[] {
  const late = new Set(
    plan.bookings.filter((booking) => isLate(problem, booking.jobId, booking.endMin)).map(({ frameId }) => frameId),
  );
  const units = poolLoads(problem, plan)
    .filter(({ binds }) => binds)
    .map(({ link, units: [likeUnit] }) => ({ kind: 'one-more-unit' as const, link, likeUnit: likeUnit! }));
  const shifts = [...late].flatMap((frameId) =>
    extraShifts.map((shift) => ({ kind: 'extra-shift' as const, frameId, shift })),
  );
  const visits = plan.visits
    .filter(({ startMin }) => startMin > 0)
    .map(({ visitId }) => ({ kind: 'earlier-visit' as const, visitId }));
  return [...units, ...shifts, ...visits];
}

function isLate(problem: Problem, jobId: string, endMin: number): boolean {
  return endMin > (problem.jobs.find(({ id }) => id === jobId)?.dueMin ?? Infinity);
}

/** The problem as it would be with a change made. */
export function withChange(problem: Problem, change: Change): Problem {
  switch (change.kind) {
    case 'one-more-unit':
      return withOneMoreUnit(problem, change.likeUnit);
    case 'extra-shift':
      return withExtraShift(problem, change.frameId, change.shift);
    case 'earlier-visit':
      return {
        ...problem,
        visits: problem.visits.map((visit) => (visit.id === change.visitId ? { ...visit, beforeMin: null } : visit)),
      };
  }
}

/** A unit that stands in every pool in which another stands. */
export function withOneMoreUnit(problem: Problem, likeUnit: string): Problem {
  const id = `${likeUnit}+1`;
  const like = problem.items.find((item) => item.id === likeUnit);
  const wider = (pool: readonly string[]) => (pool.includes(likeUnit) ? [...pool, id] : pool);
  return {
    ...problem,
    items: [...problem.items, { usable: null, ...like, id }],
    jobs: problem.jobs.map((job) => ({
      ...job,
      candidates: job.candidates.map((one) => ({
        ...one,
        links: one.links.map((need) => ({ ...need, pool: wider(need.pool) })),
      })),
    })),
  };
}

/** A frame that is worked in one more window, by somebody who may run everything and is there for it only. */
export function withExtraShift(problem: Problem, frameId: string, shift: Window): Problem {
  const everything = [...new Set(problem.jobs.flatMap(({ authorisation }) => authorisation ?? []))];
  const extra = { id: `extra ${frameId} ${shift.startMin}`, shifts: [shift], authorisations: everything };
  return {
    ...problem,
    technicians: problem.technicians && [...problem.technicians, extra],
    frames: problem.frames.map((frame) =>
      frame.id === frameId && frame.open ? { ...frame, open: joined([...frame.open, shift]) } : frame,
    ),
  };
}

function joined(windows: readonly Window[]): Window[] {
  const result: Window[] = [];
  for (const next of [...windows].sort((a, b) => a.startMin - b.startMin)) {
    const last = result.at(-1);
    if (last && next.startMin <= last.endMin) last.endMin = Math.max(last.endMin, next.endMin);
    else result.push({ ...next });
  }
  return result;
}

/**
 * Ranks changes by the weighted lateness that a new plan with each would remove, each found by replanning.
 *
 * @param replan makes a plan of a problem; the same effort for each, or the ranking means nothing
 * @param onProgress called after each change, 0 to 1; when it returns false the rest is left out
 */
export function whatWouldHelpMost(
  problem: Problem,
  plan: Plan,
  changes: readonly Change[],
  replan: (changed: Problem) => Plan,
  onProgress: (share: number) => boolean = () => true,
): Help[] {
  const helps: Help[] = [];
  for (const [index, change] of changes.entries()) {
    const { cost } = replan(withChange(problem, change));
    helps.push({
      change,
      savesWeightedLateMin: plan.cost.weightedLateMin - cost.weightedLateMin,
      lateJobsFewer: plan.cost.lateJobs - cost.lateJobs,
    });
    if (!onProgress((index + 1) / changes.length)) break;
  }
  return helps.sort((a, b) => b.savesWeightedLateMin - a.savesWeightedLateMin || b.lateJobsFewer - a.lateJobsFewer);
}
