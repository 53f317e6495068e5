import { breach, grouped, overlaps } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** A unit is on one frame, or away for calibration, at a time: from the start of the setup to the end of the job. */
export function unitInOnePlace({ plan }: Case): Breach[] {
  const held = plan.bookings.flatMap(({ jobId, items, setupStartMin, endMin }) =>
    Object.values(items).map((itemId) => ({ of: jobId, itemId, startMin: setupStartMin, endMin })),
  );
  const away = plan.visits.map(({ visitId, itemId, startMin, endMin }) => ({ of: visitId, itemId, startMin, endMin }));
  return [...grouped([...held, ...away], ({ itemId }) => itemId)].flatMap(([itemId, spans]) =>
    overlaps(spans).map(({ held: first, next, byMin }) =>
      breach('unit-in-one-place', [first.of, next.of], byMin, { itemId }),
    ),
  );
}
