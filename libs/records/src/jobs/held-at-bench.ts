import type { EntityManager } from 'typeorm';
import type { TrainLink } from './job.entity.js';
import { ON_A_FRAME } from './job.repository.js';

/** A job that holds a frame and items now. */
export interface HeldByJob {
  id: string;
  reference: string;
  frameId: string | null;
  train: TrainLink[];
  /** Ids of all that hangs on its frame, of the train or not. */
  fitted: string[];
}

/** Jobs on frames with what they keep others from using. */
export function heldAtBench(manager: EntityManager): Promise<HeldByJob[]> {
  return manager.query<HeldByJob[]>(
    `select id, reference, frame_id as "frameId", train,
       array(select item_id::text from rig_link where rig_link.frame_id = job.frame_id) as fitted
     from job where state = any($1)`,
    [ON_A_FRAME],
  );
}
