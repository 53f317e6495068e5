import { LabError } from '#libs/errors/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { updateRows } from '../platform/write-rows.js';

/** States in which the manager may still say where and when a job runs. */
const STEERABLE = ['waiting', 'ready', 'blocked'] as const;

/** What the manager tells the planner about a job: pins and holds. */
export class PlanJobRepository {
  constructor(private readonly manager: EntityManager) {}

  /**
   * Sets pin or hold of a job that is not on a frame.
   *
   * @returns what stood there before
   * @throws LabError `job/unknown`, or `job/not-steerable` with its state
   */
  async steer(jobId: string, set: Partial<JobEntity>): Promise<Record<string, unknown>> {
    const job = await this.manager.findOneBy(JobEntity, { id: jobId });
    if (!job) throw new LabError('job/unknown', 'There is no such job.', { jobId });
    const changed = await updateRows(
      this.manager,
      JobEntity,
      { id: jobId, version: job.version, state: In([...STEERABLE]) },
      set,
    );
    if (changed === 0) {
      throw new LabError(
        'job/not-steerable',
        `${job.reference} is ${job.state}; only a job that is ${STEERABLE.join(', ')} can be pinned or held.`,
        {
          state: job.state,
          allowed: STEERABLE,
        },
      );
    }
    return { holdWhy: job.holdWhy, pinFrameId: job.pinFrameId, pinStartAt: job.pinStartAt };
  }
}
