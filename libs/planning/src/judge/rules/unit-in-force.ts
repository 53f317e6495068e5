import { windowAround } from '../../windows.js';
import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Every unit may be used from the start of the setup to the end of the job: in force as it is, or renewed by its visit. */
export function unitInForce(one: Case): Breach[] {
  return planned(one).flatMap(({ booking }) =>
    Object.values(booking.items)
      .filter((itemId) => !isInForce(one, itemId, booking.setupStartMin, booking.endMin))
      .map((itemId) =>
        breach('unit-in-force', [booking.jobId], 0, {
          itemId,
          startMin: booking.setupStartMin,
          endMin: booking.endMin,
        }),
      ),
  );
}

function isInForce({ items, plan, problem }: Case, itemId: string, startMin: number, endMin: number): boolean {
  const usable = items.get(itemId)?.usable;
  if (usable === null || (usable && windowAround(usable, startMin, endMin))) return true;
  return plan.visits.some((visit) => {
    const untilMin = problem.visits.find(({ id }) => id === visit.visitId)?.inForceUntilMin ?? -Infinity;
    return visit.itemId === itemId && visit.endMin <= startMin && endMin <= untilMin;
  });
}
