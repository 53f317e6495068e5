import { breach } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Each planned job runs on one of its candidates, with one unit out of each pool, and no unit twice. */
export function eligibleTrain({ plan, jobs }: Case): Breach[] {
  return plan.bookings.flatMap(({ jobId, frameId, candidate: at, items }) => {
    const job = jobs.get(jobId);
    if (!job || job.running) return [];
    const candidate = job.candidates[at];
    if (candidate?.frameId !== frameId) return [breach('not-a-candidate', [jobId], 0, { frameId })];
    const wrong = candidate.links.filter(({ link, pool }) => !pool.includes(items[link] ?? ''));
    const extra = Object.keys(items).filter((link) => !candidate.links.some((need) => need.link === link));
    const units = Object.values(items);
    return [
      ...wrong.map(({ link }) => breach('unit-not-in-pool', [jobId], 0, { link, itemId: items[link] ?? 'none' })),
      ...extra.map((link) => breach('link-not-needed', [jobId], 0, { link })),
      ...(new Set(units).size < units.length ? [breach('unit-used-twice', [jobId], 0)] : []),
    ];
  });
}
