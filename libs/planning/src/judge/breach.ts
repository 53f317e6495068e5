import type { Booking, Plan } from '../plan.js';
import type { Candidate, Frame, Item, Job, Problem, Technician } from '../problem.js';

/** One rule that a plan breaks. */
export interface Breach {
  rule: string;
  /** Ids of the jobs or visits concerned. */
  of: readonly string[];
  /** By how many minutes; 0 where minutes say nothing. */
  byMin: number;
  /** What a sentence about it needs: frame, item, technician, figures. */
  facts: Readonly<Record<string, string | number>>;
}

/** A plan beside its problem, looked up by id. */
export interface Case {
  problem: Problem;
  plan: Plan;
  jobs: ReadonlyMap<string, Job>;
  frames: ReadonlyMap<string, Frame>;
  items: ReadonlyMap<string, Item>;
  technicians: ReadonlyMap<string, Technician>;
  bookings: ReadonlyMap<string, Booking>;
}

/** A rule looks at a case and lists what breaks it. */
export type Rule = (one: Case) => Breach[];

export const byId = <T extends { id: string }>(list: readonly T[]): Map<string, T> =>
  new Map(list.map((one) => [one.id, one]));

export function caseOf(problem: Problem, plan: Plan): Case {
  return {
    problem,
    plan,
    jobs: byId(problem.jobs),
    frames: byId(problem.frames),
    items: byId(problem.items),
    technicians: byId(problem.technicians ?? []),
    bookings: new Map(plan.bookings.map((booking) => [booking.jobId, booking])),
  };
}

/** Bookings that the planner made, each with its job and candidate; running ones and strange ones are left out. */
export function planned({ plan, jobs }: Case): { booking: Booking; job: Job; candidate: Candidate }[] {
  return plan.bookings.flatMap((booking) => {
    const job = jobs.get(booking.jobId);
    const candidate = job?.candidates[booking.candidate];
    return job && candidate && !job.running ? [{ booking, job, candidate }] : [];
  });
}

export function breach(rule: string, of: readonly string[], byMin: number, facts: Breach['facts'] = {}): Breach {
  return { rule, of, byMin, facts };
}

/** Overlaps among half-open spans that share something. */
export function overlaps<T extends { startMin: number; endMin: number }>(
  spans: readonly T[],
): { held: T; next: T; byMin: number }[] {
  const found: { held: T; next: T; byMin: number }[] = [];
  let held: T | undefined;
  for (const next of [...spans].sort((a, b) => a.startMin - b.startMin || a.endMin - b.endMin)) {
    if (held && next.startMin < held.endMin && next.endMin > next.startMin) {
      found.push({ held, next, byMin: Math.min(held.endMin, next.endMin) - next.startMin });
    }
    if (!held || next.endMin > held.endMin) held = next;
  }
  return found;
}

/** Groups by a key. */
export function grouped<T>(list: readonly T[], keyOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const group = groups.get(keyOf(one));
    if (group) group.push(one);
    else groups.set(keyOf(one), [one]);
  }
  return groups;
}
