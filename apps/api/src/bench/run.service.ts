import type { FinishBody, JobView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { pausedMs, ResultRepository, SpecimenRepository } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import { refuseUnsafe, refuseUnticked } from './interlocks.js';
import { JobActs, refuseOthers } from './job-acts.js';
import type { AtWork } from './job-acts.js';
import { moved } from './leave.js';
import { settleMissing } from './missing.js';
import { requestBegins, requestEnds } from './request-follows.js';

/** Start, pause, go on, finish. The interlocks are looked at in the transaction of the transition itself. */
@Injectable()
export class RunService {
  constructor(private readonly acts: JobActs) {}

  /** @throws LabError as the interlocks say */
  start(jobId: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'running') return null;
      if (at.job.state === 'rigged') await refuseAtStart(at);
      await at.jobs.move(at.job, 'start', { startedAt: at.now() });
      await requestBegins(at);
      return moved(at.job, 'running', { train: at.job.train, checks: at.job.checks }, null);
    });
  }

  pause(jobId: string, why: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'paused') return null;
      await at.jobs.move(at.job, 'pause', { why });
      return moved(at.job, 'paused', {}, why);
    });
  }

  /** A calibration may have lapsed and a shift ended meanwhile: the interlocks are the same as at the start. */
  resume(jobId: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'running') return null;
      if (at.job.state === 'paused') refuseUnsafe(await at.freshFacts());
      await at.jobs.move(at.job, 'resume', { why: null });
      return moved(at.job, 'running', {}, null);
    });
  }

  /** What is on the frame stays there as its rig. The last job of a request brings it into review. */
  finish(jobId: string, body: FinishBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'done') return null;
      const left = at.job.state === 'running' ? await this.settleOpen(at, body.notTestedWhy) : [];
      if (at.job.state === 'running') await settleMissing(at, body.missing ?? []);
      const finishedAt = at.now();
      await at.jobs.move(at.job, 'finish', { finishedAt, conditions: { ...body.conditions }, why: null });
      await this.keepDuration(at, finishedAt);
      await requestEnds(at);
      return moved(
        at.job,
        'done',
        {
          conditions: body.conditions,
          ...(left.length > 0 ? { notTested: left } : {}),
          ...(body.missing?.length ? { missing: body.missing } : {}),
        },
        body.notTestedWhy ?? null,
      );
    });
  }

  /** Open specimens are marked as not tested, with the reason; without one the job is not over. @returns their labels */
  private async settleOpen({ manager, job }: AtWork, why: string | undefined): Promise<string[]> {
    const specimens = new SpecimenRepository(manager);
    const open = await specimens.open(job.batchId);
    const labels = open.map(({ label }) => label);
    if (open.length > 0 && !why) {
      const sentence = `${labels.length} of the specimens of ${job.reference} are neither tested nor invalid: ${labels.join(', ')}. Test them, or say why they were not tested.`;
      throw new LabError('bench/specimens-open', sentence, { open: labels });
    }
    for (const specimen of open) await specimens.change(specimen, { fate: 'not-tested', invalidWhy: why! });
    return labels;
  }

  /** The durations that planning learns from: setting up, and working without the pauses. */
  private async keepDuration({ manager, job, facts }: AtWork, finishedAt: Date): Promise<void> {
    const { method, specimens } = await facts();
    const tested = specimens.filter(({ fate }) => fate === 'tested' || fate === 'invalid').length;
    if (tested === 0 || !job.takenAt || !job.startedAt) return;
    const workedMs =
      finishedAt.getTime() - job.startedAt.getTime() - (await pausedMs(manager, job.id, job.startedAt, finishedAt));
    await new ResultRepository(manager).keepDuration({
      ...{ jobId: job.id, methodCode: method.code, specimens: tested, at: finishedAt },
      setupMin: (job.startedAt.getTime() - job.takenAt.getTime()) / MS_PER_MINUTE,
      workMin: Math.max(0, workedMs) / MS_PER_MINUTE,
    });
  }
}

const MS_PER_MINUTE = 60_000;

async function refuseAtStart(at: AtWork): Promise<void> {
  const facts = await at.freshFacts();
  refuseUnsafe(facts);
  refuseUnticked(facts);
}
