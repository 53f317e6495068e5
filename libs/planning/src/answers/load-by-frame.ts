import type { Plan } from '../plan.js';
import type { Problem, Window } from '../problem.js';
import { workingWindows } from '../windows.js';

/** Booked and open time of one frame in one span, min. `share` is booked ÷ open; null where it is not open at all. */
export interface FrameLoad {
  frameId: string;
  span: Window;
  bookedMin: number;
  openMin: number;
  share: number | null;
}

/**
 * How full each frame is, span by span. Only open minutes count as booked, so that a rig kept over night does not fill the night.
 *
 * @param spans e.g. the weeks of the lab's time zone, half-open, min
 */
export function loadByFrame(problem: Problem, plan: Plan, spans: readonly Window[]): FrameLoad[] {
  return problem.frames.flatMap((frame) => {
    const open = workingWindows(frame);
    const stints = plan.bookings.filter((booking) => booking.frameId === frame.id).flatMap((booking) => booking.stints);
    return spans.map((span) => {
      const openMin = sumWithin(open, span);
      const bookedMin = sumWithin(stints, span);
      return { frameId: frame.id, span, bookedMin, openMin, share: openMin === 0 ? null : bookedMin / openMin };
    });
  });
}

/** Minutes of the windows that lie in a span. */
export function sumWithin(windows: readonly Window[], span: Window): number {
  return windows.reduce(
    (sum, { startMin, endMin }) => sum + Math.max(0, Math.min(endMin, span.endMin) - Math.max(startMin, span.startMin)),
    0,
  );
}
