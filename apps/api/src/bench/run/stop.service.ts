import type { BlockBody, JobView } from '#libs/contract/src/index.js';
import type { JobEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import { JobActs, refuseOthers } from '../job/job-acts.js';
import { leaveFrame, moved, openFault } from './leave.js';
import { requestEnds } from './request-follows.js';

/** Back into the plan, or to the manager: what a job held is free again, as it was before somebody took it. */
const FREE: Partial<JobEntity> = {
  frameId: null,
  technicianId: null,
  train: [],
  checks: {},
  takenAt: null,
  startedAt: null,
  why: null,
};

/** The ways in which work on a job ends before it is done. */
@Injectable()
export class StopService {
  constructor(private readonly acts: JobActs) {}

  /** Somebody else may take it; what was fitted stays on the frame. */
  giveBack(jobId: string, why: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      await leaveFrame(at);
      await at.jobs.move(at.job, 'give-back', FREE);
      return moved(at.job, 'ready', { givenBack: true }, why);
    });
  }

  /** Something failed: the job goes back to planning, and the item that failed is not used until it is repaired. */
  block(jobId: string, { why, itemId }: BlockBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'blocked') return null;
      await leaveFrame(at);
      await at.jobs.move(at.job, 'block', { why });
      if (itemId) await openFault(at, itemId, why);
      return moved(at.job, 'blocked', itemId ? { failedItemId: itemId } : {}, why);
    });
  }

  /** The manager lets a blocked job be planned and taken again. What was found so far stays. */
  unblock(jobId: string, why: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      if (at.job.state === 'ready') return null;
      await at.jobs.move(at.job, 'unblock', FREE);
      return moved(at.job, 'ready', { was: { frameId: at.job.frameId, train: at.job.train } }, why);
    });
  }

  abort(jobId: string, why: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      if (at.job.state === 'aborted') return null;
      await leaveFrame(at);
      await at.jobs.move(at.job, 'abort', { why, finishedAt: at.now() });
      await requestEnds(at);
      return moved(at.job, 'aborted', {}, why);
    });
  }
}
