import { keptBookings } from '../../kept.js';
import { breach } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/**
 * Running jobs stay as they are; pinned jobs are on their frame, and not before the pinned minute; what the freeze window
 * keeps is on the frame that was published, and not before. A pin or frozen start that cannot be had comes later, and costs.
 */
export function pinsKept(one: Case): Breach[] {
  const running = one.problem.jobs.flatMap(({ id, running: runs }) => {
    const booking = one.bookings.get(id);
    if (!runs || !booking) return [];
    const same =
      booking.frameId === runs.frameId && booking.startMin === runs.startMin && booking.endMin === runs.endMin;
    return same ? [] : [breach('running-job-moved', [id], 0)];
  });
  const pinned = one.problem.jobs.flatMap((job) =>
    job.pin && !job.running ? offPlace(one, 'pin-kept', job.id, job.pin.frameId, job.pin.startMin) : [],
  );
  const frozen = keptBookings(one.problem).flatMap(({ jobId, frameId, startMin }) =>
    offPlace(one, 'freeze-kept', jobId, frameId, startMin),
  );
  return [...running, ...pinned, ...frozen];
}

function offPlace({ bookings }: Case, rule: string, jobId: string, frameId: string, startMin: number | null): Breach[] {
  const booking = bookings.get(jobId);
  if (!booking) return [];
  const early = startMin === null ? 0 : startMin - booking.startMin;
  return booking.frameId === frameId && early <= 0 ? [] : [breach(rule, [jobId], Math.max(0, early), { frameId })];
}
