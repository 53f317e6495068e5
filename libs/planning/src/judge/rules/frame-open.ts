import { runningWindows, windowAround, workingWindows } from '../../windows.js';
import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/**
 * Setups, and work that needs somebody, lie inside the frame's working windows. A run that needs nobody begins in one, and
 * goes on while the frame is not down.
 */
export function frameOpen(one: Case): Breach[] {
  return planned(one).flatMap(({ booking, job }) => {
    const frame = one.frames.get(booking.frameId);
    if (!frame) return [];
    const working = workingWindows(frame);
    const outside = booking.stints.filter(({ kind, startMin, endMin }) => {
      if (kind === 'setup' || job.attended === 'throughout') return !windowAround(working, startMin, endMin);
      return !windowAround(working, startMin, startMin + 1) || !windowAround(runningWindows(frame), startMin, endMin);
    });
    return outside
      .filter(({ startMin, endMin }) => endMin > startMin)
      .map(({ kind, startMin, endMin }) =>
        breach('frame-open', [booking.jobId], 0, { frameId: frame.id, kind, startMin, endMin }),
      );
  });
}
