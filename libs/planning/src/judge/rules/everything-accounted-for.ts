import { breach } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Every job and visit is in the plan exactly once, or in its list of what found no place; what is held is not planned. */
export function everythingAccountedFor({ problem, plan }: Case): Breach[] {
  const said = [
    ...plan.bookings.map(({ jobId }) => jobId),
    ...plan.visits.map(({ visitId }) => visitId),
    ...plan.unplaced.map(({ id }) => id),
  ];
  const times = new Map<string, number>();
  for (const id of said) times.set(id, (times.get(id) ?? 0) + 1);
  const asked = [...problem.jobs, ...problem.visits].map(({ id }) => id);
  const strange = [...times.keys()].filter((id) => !asked.includes(id));
  const wrong = asked.filter((id) => times.get(id) !== 1);
  const booked = new Set(plan.bookings.map(({ jobId }) => jobId));
  const held = problem.jobs.filter((job) => job.hold && !job.running && booked.has(job.id));
  return [
    ...[...wrong, ...strange].map((id) => breach('accounted-for-once', [id], 0, { times: times.get(id) ?? 0 })),
    ...held.map(({ id }) => breach('held-job-planned', [id], 0)),
  ];
}
