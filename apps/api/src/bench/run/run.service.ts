import { findingsAt, isOpen } from '#libs/bench/src/index.js';
import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import type { FinishBody, JobView } from '#libs/contract/src/index.js';
import { readPausedMs, ResultRepository, SpecimenRepository } from '#libs/records/src/index.js';
import type { SpecimenEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import { atFrameOf } from '../job/at-frame-of.js';
import type { BenchFacts } from '../job/bench-facts.js';
import { JobActs, refuseOthers } from '../job/job-acts.js';
import type { AtWork } from '../job/job-acts.js';
import { refuseAny } from '../job/refuse.js';
import { lacksOf, refuseUnknown, withReasons } from '../specimens/missing.js';
import { moved } from './leave.js';
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
      if (at.job.state === 'rigged') refuseAny(findingsAt('start', atFrameOf(await at.freshFacts(), by.id)));
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

  /** A calibration may have lapsed and a shift ended meanwhile: the interlocks are those of the start but for the ticks. */
  resume(jobId: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'running') return null;
      if (at.job.state === 'paused') refuseAny(findingsAt('resume', atFrameOf(await at.freshFacts(), by.id)));
      await at.jobs.move(at.job, 'resume', { why: null });
      return moved(at.job, 'running', {}, null);
    });
  }

  /** What is on the frame stays there as its rig. The last job of a request brings it into review. */
  finish(jobId: string, body: FinishBody, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      if (at.job.state === 'done') return null;
      const facts = await at.facts();
      const left = at.job.state === 'running' ? await settle(at, facts, body) : [];
      const finishedAt = at.now();
      await at.jobs.move(at.job, 'finish', { finishedAt, conditions: body.conditions, why: null });
      await storeDuration(at, facts, finishedAt);
      await requestEnds(at);
      const after = {
        conditions: body.conditions,
        ...(left.length > 0 ? { notTested: left } : {}),
        ...(body.missing?.length ? { missing: body.missing } : {}),
      };
      return moved(at.job, 'done', after, body.notTestedWhy ?? null);
    });
  }
}

/**
 * Every specimen has an end: open ones are marked as not tested, and reasons for results without a figure are kept.
 *
 * @returns labels of those that were not tested
 */
async function settle(
  { by, manager }: AtWork,
  facts: BenchFacts,
  { notTestedWhy = null, missing = [] }: Pick<FinishBody, 'missing'> & { notTestedWhy?: string | null },
): Promise<string[]> {
  refuseUnknown(facts, missing);
  const changes = facts.specimens.map((row) => {
    const own = missing.filter(({ specimenId }) => specimenId === undefined || specimenId === row.id);
    return { row, set: setOf(facts, row, own, notTestedWhy) };
  });
  const specimens = changes.map(({ row, set }) => ({ ...row, ...set }));
  const at = { ...atFrameOf(facts, by.id), notTestedWhy, lacks: lacksOf({ ...facts, specimens }) };
  refuseAny(findingsAt('finish', at));
  for (const { row, set } of changes) if (set) await new SpecimenRepository(manager).change(row, set);
  return facts.specimens.filter(isOpen).map(({ label }) => label);
}

function setOf(
  facts: BenchFacts,
  row: SpecimenEntity,
  said: NonNullable<FinishBody['missing']>,
  notTestedWhy: string | null,
): Partial<SpecimenEntity> | null {
  if (isOpen(row)) return notTestedWhy === null ? null : { fate: 'not-tested', invalidWhy: notTestedWhy };
  const missingWhy = withReasons(facts, row, said);
  return missingWhy && { missingWhy };
}

/** The durations that planning learns from: setting up, and working without the pauses. */
async function storeDuration(
  { manager, job }: AtWork,
  { method, specimens }: BenchFacts,
  finishedAt: Date,
): Promise<void> {
  const tested = specimens.filter(({ fate }) => fate === 'tested' || fate === 'invalid').length;
  if (tested === 0 || !job.takenAt || !job.startedAt) return;
  const paused = await readPausedMs(manager, job.id, job.startedAt, finishedAt);
  const workedMs = finishedAt.getTime() - job.startedAt.getTime() - paused;
  await new ResultRepository(manager).storeDuration({
    ...{ jobId: job.id, methodCode: method.code, specimens: tested, at: finishedAt },
    setupMin: (job.startedAt.getTime() - job.takenAt.getTime()) / MS_PER_MINUTE,
    workMin: Math.max(0, workedMs) / MS_PER_MINUTE,
  });
}
