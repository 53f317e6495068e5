import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Work begins neither before its release, nor before minute 0, nor before the jobs that come first have ended. */
export function releasedAndAfter(one: Case): Breach[] {
  return planned(one).flatMap(({ booking, job }) => {
    const early = job.releaseMin - booking.startMin;
    const past = -booking.setupStartMin;
    const before = job.after.flatMap((id) => {
      const first = one.bookings.get(id);
      if (!first) return one.jobs.has(id) ? [breach('comes-after', [id, job.id], 0)] : [];
      const byMin = first.endMin - booking.startMin;
      return byMin > 0 ? [breach('comes-after', [id, job.id], byMin)] : [];
    });
    return [
      ...(early > 0 ? [breach('released', [job.id], early, { releaseMin: job.releaseMin })] : []),
      ...(past > 0 ? [breach('in-the-past', [job.id], past)] : []),
      ...before,
    ];
  });
}
