import { In, Not } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { insertRows, updateRows } from '../platform/write-rows.js';

/** What happens to the jobs of a request as a whole: they are made, released and aborted with it. */
export class RequestJobRepository {
  constructor(private readonly manager: EntityManager) {}

  of(requestId: string): Promise<JobEntity[]> {
    return this.manager.find(JobEntity, { where: { requestId }, order: { reference: 'ASC' } });
  }

  async add(jobs: readonly Partial<JobEntity>[]): Promise<void> {
    await insertRows(this.manager, JobEntity, jobs);
  }

  /** From when on the job may run; a job that waited for its specimens becomes ready. */
  async release(jobId: string, releasedAt: Date): Promise<void> {
    await updateRows(
      this.manager,
      JobEntity,
      { id: jobId, state: 'waiting' },
      { state: 'ready', releasedAt, why: null },
    );
    await updateRows(this.manager, JobEntity, { id: jobId, state: 'ready' }, { releasedAt });
  }

  /** Aborts every job of a request that is not over. @returns the references of those that were */
  async abortOpen(requestId: string, why: string): Promise<string[]> {
    const open = await this.manager.findBy(JobEntity, { requestId, state: Not(In(['done', 'aborted'])) });
    await updateRows(this.manager, JobEntity, { id: In(open.map(({ id }) => id)) }, { state: 'aborted', why });
    return open.map(({ reference }) => reference);
  }
}
