import { breach } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Lateness, changeover and length of the plan are what it says they are. */
export function costAsStated({ plan, jobs }: Case): Breach[] {
  let weightedLateMin = 0;
  let changeoverMin = 0;
  let makespanMin = 0;
  for (const { jobId, endMin, setupMin } of plan.bookings) {
    const job = jobs.get(jobId);
    weightedLateMin += Math.max(0, endMin - (job?.dueMin ?? endMin)) * (job?.weight ?? 0);
    changeoverMin += setupMin;
    makespanMin = Math.max(makespanMin, endMin);
  }
  const found = { weightedLateMin, changeoverMin, makespanMin };
  return (['weightedLateMin', 'changeoverMin', 'makespanMin'] as const)
    .filter((part) => Math.abs(found[part] - plan.cost[part]) > 1e-6 * Math.max(1, found[part]))
    .map((part) => breach('cost-as-stated', [], 0, { part, found: found[part], stated: plan.cost[part] }));
}
