import { LabError } from '#libs/errors/src/index.js';
import type { Plan } from '#libs/planning/src/index.js';
import {
  updatePromises,
  LabRecords,
  PlanRepository,
  readPlanFacts,
  releaseBlocked,
  withdrawPromises,
} from '#libs/records/src/index.js';
import type { PlanFacts } from '#libs/records/src/index.js';
import type { TaskContext, TaskPayload } from '#libs/tasks/src/index.js';
import { Injectable } from '@nestjs/common';
import type { TaskProcessor } from '../platform/task-processor.js';
import { matchJob } from './match-job.js';
import { outcomeOf } from './outcome-of.js';
import type { PlanOutcome } from './outcome-of.js';
import { planInThread } from './plan-in-thread.js';
import { problemOf } from './problem-of.js';
import type { PlanningTask } from './problem-of.js';
import { Words } from './words.js';

/** When the lab changes faster than it is planned, less thinking is better than no plan: shares of the usual time, try by try. */
const SHARES = [1, 0.3, 0.1];

/** Makes a plan of the facts and publishes it as one version. A run that is repeated makes a newer plan of newer facts. */
@Injectable()
export class ReplanProcessor implements TaskProcessor<'replan'> {
  readonly handles = 'replan';

  constructor(private readonly records: LabRecords) {}

  async run({ because, byId }: TaskPayload<'replan'>, context: TaskContext): Promise<Record<string, unknown> | void> {
    for (const share of SHARES) {
      const facts = await readPlanFacts(this.records.source, this.records.clock.nowMs());
      const outcome = await this.think(facts, share, context);
      if (await context.cancelled()) return;
      const version = await this.publish(facts, outcome, because, byId);
      if (version !== null) return { version, ...outcome.notes.figures };
    }
    // Whatever changed the facts meanwhile has announced the next plan.
    return { version: null };
  }

  private async think(facts: PlanFacts, share: number, context: TaskContext): Promise<PlanOutcome> {
    const task = problemOf(facts, matchJob);
    const plan = await this.planOf(facts, task, share, context);
    return outcomeOf(facts, task, plan);
  }

  /** @throws LabError that names what is wrong with the facts, in the lab's own tags and references */
  private async planOf(facts: PlanFacts, task: PlanningTask, share: number, context: TaskContext): Promise<Plan> {
    const timeMs = Math.max(50, facts.settings.planningSeconds * 1_000 * share);
    try {
      return await planInThread(task.problem, timeMs, 1, {
        onProgress: (done, cost) =>
          void context.progress(done * 100, `Cost ${Math.round(cost)} so far`).catch(() => {}),
        shouldStop: () => context.cancelled(),
      });
    } catch (error) {
      if (!(error instanceof LabError)) throw error;
      const words = new Words(facts, task.originMs);
      throw new LabError(error.code, words.named(error.message), error.facts, { cause: error });
    }
  }

  /** @returns the version, or null when the lab changed while the plan was made */
  private async publish(
    facts: PlanFacts,
    outcome: PlanOutcome,
    because: string,
    byId: string | null,
  ): Promise<number | null> {
    try {
      return await this.records.act(byId, async (act) => {
        const plan = await new PlanRepository(act.manager).publish(
          {
            ...{ stamp: facts.stamp, madeAt: new Date(facts.nowMs), madeBy: byId ?? 'planner', cause: because },
            notes: outcome.notes,
            bookings: outcome.bookings,
          },
          act,
        );
        const withdrawn = withoutPlace(facts, outcome);
        await updatePromises(act, promisesOf(facts, outcome, withdrawn), because);
        await withdrawPromises(act, withdrawn);
        await releaseBlocked(
          act,
          outcome.bookings.flatMap(({ jobId }) => jobId ?? []),
        );
        return plan.version;
      });
    } catch (error) {
      if (error instanceof LabError && error.code === 'plan/stale-facts') return null;
      throw error;
    }
  }
}

/** By request, which of its jobs has no place in the plan, and why. */
function withoutPlace(facts: PlanFacts, { notes }: PlanOutcome): Map<string, string> {
  const jobs = new Map(facts.jobs.map((job) => [job.id, job]));
  return new Map(
    notes.unplaced.flatMap(({ jobId, reasons }) => {
      const job = jobs.get(jobId);
      return job ? [[job.requestId, `${job.reference} has no place in the plan. ${reasons.join(' ')}`] as const] : [];
    }),
  );
}

/** By request, when its last job is done with 50 and with 80 %; none where a job has no place. */
function promisesOf(
  facts: PlanFacts,
  { promises }: PlanOutcome,
  withdrawn: ReadonlyMap<string, string>,
): Map<string, { at50: Date; at80: Date }> {
  const originMs = Math.floor(facts.nowMs / 60_000) * 60_000;
  const byRequest = new Map<string, { at50: Date; at80: Date }>();
  for (const { jobId, done50Min, done80Min } of promises) {
    const requestId = facts.jobs.find(({ id }) => id === jobId)?.requestId;
    if (!requestId || withdrawn.has(requestId)) continue;
    const before = byRequest.get(requestId);
    byRequest.set(requestId, {
      at50: later(before?.at50, new Date(originMs + Math.round(done50Min) * 60_000)),
      at80: later(before?.at80, new Date(originMs + Math.round(done80Min) * 60_000)),
    });
  }
  return byRequest;
}

function later(a: Date | undefined, b: Date): Date {
  return a && a > b ? a : b;
}
