import { DEFAULT_OBJECTIVE } from '#libs/planning/src/index.js';
import { NO_CHANGEOVER } from '#test/support/no-changeover.js';
import type { Booking, Candidate, Job, Plan, Problem } from '#libs/planning/src/index.js';

/** Problems and plans that are small enough to be worked out by hand. */

export function smallCandidate(frameId: string, perSpecimenMin: number, pool: readonly string[] = []): Candidate {
  const links = pool.length > 0 ? [{ link: 'ends', pool }] : [];
  return { frameId, perSpecimenMin, specimens: 1, links, family: null, temperatureC: null };
}

export function smallJob(id: string, job: Partial<Job>): Job {
  const free = {
    after: [],
    attended: 'throughout' as const,
    authorisation: null,
    hold: false,
    pin: null,
    running: null,
  };
  return { id, releaseMin: 0, dueMin: 1_000, weight: 1, candidates: [], ...free, ...job };
}

export function smallProblem(problem: Partial<Problem>): Problem {
  return {
    ...{
      horizonMin: 10_000,
      frames: [],
      items: [],
      technicians: null,
      jobs: [],
      visits: [],
      published: null,
      freezeUntilMin: 0,
    },
    ...{ changeover: NO_CHANGEOVER, objective: DEFAULT_OBJECTIVE },
    ...problem,
  };
}

export function smallBooking(
  jobId: string,
  frameId: string,
  setupStartMin: number,
  startMin: number,
  endMin: number,
  items: Record<string, string> = {},
): Booking {
  const setup = { kind: 'setup' as const, startMin: setupStartMin, endMin: startMin, technicianId: null };
  const work = { kind: 'work' as const, startMin, endMin, technicianId: null };
  const stints = startMin > setupStartMin ? [setup, work] : [work];
  return {
    jobId,
    frameId,
    candidate: 0,
    items,
    setupStartMin,
    setupMin: startMin - setupStartMin,
    startMin,
    endMin,
    stints,
  };
}

export function smallPlan(bookings: readonly Booking[], cost: Partial<Plan['cost']> = {}): Plan {
  const none = { total: 0, weightedLateMin: 0, lateJobs: 0, changeoverMin: 0, movedMin: 0, movedFrames: 0 };
  return {
    bookings,
    visits: [],
    unplaced: [],
    order: [],
    cost: { ...none, makespanMin: 0, sumOfEndsMin: 0, loadHoursSquared: 0, unplaced: 0, ...cost },
  };
}

export const openFrame = (id: string, open: Problem['frames'][number]['open'] = null) => ({
  ...{ id, open, warmUpMin: 0, warmUpAfterMin: 0 },
  rig: { items: {}, family: null, temperatureC: null },
});
