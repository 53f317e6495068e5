import { runningWindows, windowAround } from '../../windows.js';
import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** No train stays on a frame while the frame is down: from the start of the setup to the end of the job it is up. */
export function offForMaintenance(one: Case): Breach[] {
  return planned(one).flatMap(({ booking: { jobId, frameId, setupStartMin, endMin } }) => {
    const frame = one.frames.get(frameId);
    if (!frame || windowAround(runningWindows(frame), setupStartMin, endMin)) return [];
    return [breach('off-for-maintenance', [jobId], 0, { frameId, startMin: setupStartMin, endMin })];
  });
}
