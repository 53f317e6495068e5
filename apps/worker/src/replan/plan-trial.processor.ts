import type { PlanComparison, TrialEdit } from '#libs/contract/src/index.js';
import { comparePlans } from '#libs/planning/src/index.js';
import type { Plan } from '#libs/planning/src/index.js';
import { LabRecords, readPlanFacts, TrialRepository } from '#libs/records/src/index.js';
import type { PlanFacts, TrialOutcome, TrialPlanEntity } from '#libs/records/src/index.js';
import type { TaskContext, TaskPayload } from '#libs/tasks/src/index.js';
import { Injectable } from '@nestjs/common';
import type { TaskProcessor } from '../platform/task-processor.js';
import { matchJob } from './match-job.js';
import { figuresOf, outcomeOf } from './outcome-of.js';
import { planInThread } from './plan-in-thread.js';
import { problemOf } from './problem-of.js';
import type { PlanningTask } from './problem-of.js';
import { withEdits } from './with-edits.js';
import { Words } from './words.js';

/** Somebody waits for it while trying, so that it thinks for a part of the usual time only. */
const SHARE_OF_THINKING = 0.25;
/** The side with the changes gets as many rounds as the other made, though it took so many times as long. */
const LONGEST = 3;

/** Plans a trial plan with its changes, and the lab without them, and keeps how they differ. A repeated run overwrites it. */
@Injectable()
export class PlanTrialProcessor implements TaskProcessor<'plan-trial'> {
  readonly handles = 'plan-trial';

  constructor(private readonly records: LabRecords) {}

  async run({ trialId }: TaskPayload<'plan-trial'>, context: TaskContext): Promise<Record<string, unknown> | void> {
    const trial = await new TrialRepository(this.records.manager).get(trialId);
    if (trial.state !== 'open') return { trialId, state: trial.state };
    const facts = await readPlanFacts(this.records.source, this.records.clock.nowMs());
    const edits = trial.edits;
    const { facts: changed, overlay, adjust } = withEdits(facts, edits);
    const [without, withThem] = [problemOf(facts, matchJob), problemOf(changed, matchJob, overlay)];
    const tried = { ...withThem, problem: adjust(withThem.problem) };
    const timeMs = Math.max(50, facts.settings.planningSeconds * 1_000 * SHARE_OF_THINKING);
    let rounds: number | null = null;
    const before = await planInThread(without.problem, timeMs, 1, { onEnd: (made) => (rounds = made) });
    const after = await planInThread(tried.problem, rounds === null ? timeMs : timeMs * LONGEST, 1, {
      rounds,
      onProgress: (done) => void context.progress(done * 100, 'Planning the trial').catch(() => {}),
    });
    await this.keep(trial, changed, tried, before, after, edits);
    return { trialId };
  }

  private async keep(
    trial: TrialPlanEntity,
    facts: PlanFacts,
    task: PlanningTask,
    before: Plan,
    after: Plan,
    edits: readonly TrialEdit[],
  ): Promise<void> {
    const { bookings, notes } = outcomeOf(facts, task, after);
    const outcome: TrialOutcome = {
      ...{
        forVersion: trial.version,
        stamp: facts.stamp,
        madeAt: new Date(facts.nowMs).toISOString(),
        bookings,
        notes,
      },
      comparison: comparisonOf(before, after, facts, task),
      refused: refusedEdits(edits, after, notes),
    };
    await this.records.quietly((manager) => new TrialRepository(manager).storeOutcome(trial, outcome));
  }
}

function comparisonOf(before: Plan, after: Plan, facts: PlanFacts, task: PlanningTask): PlanComparison {
  const difference = comparePlans(before, after);
  const words = new Words(facts, task.originMs);
  const title = (jobId: string) => facts.jobs.find(({ id }) => id === jobId)?.title ?? '';
  const shift = ({ jobId, minutes }: { jobId: string; minutes: number }) => ({
    ...{ jobId, jobReference: words.job(jobId), title: title(jobId) },
    hours: Math.round(Math.abs(minutes) / 6) / 10,
  });
  return {
    before: figuresOf(before, task),
    after: figuresOf(after, task),
    later: difference.later.map(shift),
    earlier: difference.earlier.map(shift),
    movedFrame: difference.otherFrame.map(({ jobId, from, to }) => ({
      jobId,
      jobReference: words.job(jobId),
      from: words.tag(from),
      to: words.tag(to),
    })),
  };
}

/** A move that the plan could not follow: the job found no place there. */
function refusedEdits(edits: readonly TrialEdit[], plan: Plan, notes: TrialOutcome['notes']): TrialOutcome['refused'] {
  return edits.flatMap((edit, index) => {
    if (edit.kind !== 'move') return [];
    const later = edits
      .slice(index + 1)
      .some(
        (other) => 'jobId' in other && other.jobId === edit.jobId && ['move', 'unpin', 'hold'].includes(other.kind),
      );
    const booked = plan.bookings.some(({ jobId, frameId }) => jobId === edit.jobId && frameId === edit.frameId);
    if (later || booked) return [];
    const reasons = notes.unplaced.find(({ jobId }) => jobId === edit.jobId)?.reasons;
    return [
      {
        edit: index,
        reasons: reasons ?? [
          'The job finds no place on that frame at that time: the frame is closed, or frame, items or technicians are bound.',
        ],
      },
    ];
  });
}
