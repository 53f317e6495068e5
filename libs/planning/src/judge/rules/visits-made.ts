import { breach } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Each visit lasts as long as it takes, concerns its item, and does not begin before it may. */
export function visitsMade({ problem, plan }: Case): Breach[] {
  return plan.visits.flatMap(({ visitId, itemId, startMin, endMin }) => {
    const visit = problem.visits.find(({ id }) => id === visitId);
    if (!visit) return [];
    const off = Math.abs(endMin - startMin - visit.durationMin);
    const early = visit.earliestMin - startMin;
    return [
      ...(off > 0 || visit.itemId !== itemId ? [breach('visit-as-asked', [visitId], off, { itemId })] : []),
      ...(early > 0 ? [breach('visit-too-early', [visitId], early)] : []),
    ];
  });
}
