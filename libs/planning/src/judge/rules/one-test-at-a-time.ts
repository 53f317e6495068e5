import { breach, grouped, overlaps } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** A frame carries one job at a time, its changeover included; one may begin in the minute another ends. */
export function oneTestAtATime({ plan }: Case): Breach[] {
  const spans = plan.bookings.map(({ jobId, frameId, setupStartMin, endMin }) => ({
    jobId,
    frameId,
    startMin: setupStartMin,
    endMin,
  }));
  return [...grouped(spans, ({ frameId }) => frameId)].flatMap(([frameId, all]) =>
    overlaps(all).map(({ held, next, byMin }) =>
      breach('one-test-at-a-time', [held.jobId, next.jobId], byMin, { frameId }),
    ),
  );
}
