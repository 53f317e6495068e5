import type { EntityManager } from 'typeorm';
import { RecordEventEntity } from '../record/record-event.entity.js';

/** How long a job stood paused or blocked since an instant, ms, as the record tells it. */
export async function readPausedMs(manager: EntityManager, jobId: string, since: Date, until: Date): Promise<number> {
  const events = await manager.find(RecordEventEntity, { where: { subjectId: jobId }, order: { at: 'ASC' } });
  let stoodMs = 0;
  let stoppedMs: number | null = null;
  for (const { kind, at } of events.filter((event) => event.at >= since)) {
    if (kind === 'job/paused' || kind === 'job/blocked') stoppedMs ??= at.getTime();
    if (kind === 'job/running' && stoppedMs !== null) {
      stoodMs += at.getTime() - stoppedMs;
      stoppedMs = null;
    }
  }
  return stoppedMs === null ? stoodMs : stoodMs + until.getTime() - stoppedMs;
}
