import { JOB_MOVES, waysOut } from '#libs/contract/src/index.js';
import type { JobMove } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { updateRows } from '../platform/write-rows.js';
import { RequestEntity } from '../requests/request.entity.js';
import { JobEntity } from './job.entity.js';

/** A job holds its frame and its items in these states. */
export const ON_A_FRAME = ['taken', 'rigged', 'running', 'paused'] as const;

/** Held while somebody takes a job, so that no job, frame or item is taken twice. */
const TAKE_LOCK = 732_303;

/** What guards a change of a job. */
type Guarded = Pick<JobEntity, 'id' | 'reference' | 'state' | 'version'>;

/** Jobs, moved only along the table of moves, each move guarded by the state and version that were read. */
export class JobRepository {
  constructor(private readonly manager: EntityManager) {}

  /** @throws LabError `job/unknown` */
  async get(id: string): Promise<JobEntity> {
    const job = await this.manager.findOneBy(JobEntity, { id });
    if (!job) throw new LabError('job/unknown', 'There is no such job.', { jobId: id });
    return job;
  }

  /** The same, and whoever else changes this job waits until this transaction is through. */
  async lock(id: string): Promise<JobEntity> {
    const job = await this.manager.findOne(JobEntity, { where: { id }, lock: { mode: 'for_no_key_update' } });
    if (!job) throw new LabError('job/unknown', 'There is no such job.', { jobId: id });
    return job;
  }

  /** The request of a job; other jobs of it wait, so that the last one to end knows that it is the last. */
  lockRequest(requestId: string): Promise<RequestEntity> {
    return this.manager.findOneOrFail(RequestEntity, { where: { id: requestId }, lock: { mode: 'for_no_key_update' } });
  }

  /** Makes everybody else who takes a job wait until this transaction is through. */
  async waitToTake(): Promise<void> {
    await this.manager.query('select pg_advisory_xact_lock($1)', [TAKE_LOCK]);
  }

  ofTechnician(technicianId: string): Promise<JobEntity[]> {
    return this.manager.find(JobEntity, {
      where: { technicianId, state: In([...ON_A_FRAME]) },
      order: { takenAt: 'ASC' },
    });
  }

  ofRequest(requestId: string): Promise<JobEntity[]> {
    return this.manager.findBy(JobEntity, { requestId });
  }

  /**
   * Moves a job along the table of moves.
   *
   * @throws LabError `job/move-not-allowed` with its state and the ways out of it, `job/changed-meanwhile`
   */
  async move(job: Guarded, move: JobMove, set: Partial<JobEntity> = {}): Promise<JobEntity> {
    const { from, to } = JOB_MOVES[move];
    if (!from.includes(job.state)) {
      const out = waysOut(JOB_MOVES, job.state);
      const ways = out.length > 0 ? `From there one can ${out.join(', ')}` : 'Nothing leads out of that state';
      throw new LabError('job/move-not-allowed', `${job.reference} is ${job.state}; one cannot ${move} it. ${ways}.`, {
        ...{ state: job.state, move, waysOut: out },
      });
    }
    return this.change(job, { ...set, state: to });
  }

  /** Changes a job without moving it, unless someone changed it since it was read. @throws LabError `job/changed-meanwhile` */
  async change(job: Guarded, set: Partial<JobEntity>): Promise<JobEntity> {
    const where = { id: job.id, version: job.version, state: job.state };
    const changed = await updateRows(this.manager, JobEntity, where, set);
    if (changed === 0) {
      throw new LabError(
        'job/changed-meanwhile',
        `${job.reference} was changed by someone else. Reload it and try again.`,
      );
    }
    return this.get(job.id);
  }
}

/** What the key of a reading begins with. */
export const READING_KEY = 'curve/';

/** The key under which the reading of a specimen's curve is announced. */
export function readingKey(specimenId: string): string {
  return READING_KEY + specimenId;
}
