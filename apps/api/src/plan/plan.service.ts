import { calendarOf } from '#libs/calendar/src/index.js';
import type { FitView, PlanView, TaskView, WhyView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import {
  announce,
  closedDays,
  getTaskView,
  LabRecords,
  labSettings,
  readPlanAround,
  PlanJobRepository,
  PlanRepository,
  TrialRepository,
} from '#libs/records/src/index.js';
import type { BookingEntity, JobEntity, PlanEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { CurrentLab } from '../platform/current-lab.js';
import type { Asked } from '../platform/current-lab.js';
import type { SignedIn } from '../platform/signed-in.js';
import { extraShiftsOf, fitsOf } from './fits-of.js';
import { notesOf, planView } from './plan-view.js';

/** The plan in force, and the newest one that moved a job: often the same, for a plan that finds nothing to move follows fast. */
interface PublishedPlan {
  plan: PlanEntity;
  bookings: BookingEntity[];
  moved: PlanEntity | null;
}

/** The published plan: looking at it, and telling the planner what it has to keep to. */
@Injectable()
export class PlanService {
  /** The plan that was looked at last: what is published is never edited. */
  private kept: PublishedPlan | null = null;

  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
  ) {}

  /** @throws LabError `plan/none` before the first plan */
  async view(asked: Asked): Promise<PlanView> {
    const { manager } = this.records;
    const { id, stale } = await new PlanRepository(manager).headOfPublished();
    const { plan, bookings, moved } = await this.published(id);
    const nowMs = this.records.clock.nowMs();
    const jobIds = [...bookings, ...(moved?.notes.changes ?? [])].flatMap(({ jobId }) => jobId ?? []);
    const { settings, closedDays: closed } = await this.current.asRead(asked);
    return planView({
      head: { ...plan, stale },
      notes: plan.notes,
      around: await readPlanAround(manager, jobIds, new Date(nowMs)),
      closedDays: closed,
      ...{ bookings, settings, nowMs, moved },
    });
  }

  /** Asks for a new plan now. */
  replan(by: SignedIn): Promise<TaskView> {
    return this.ask((manager) =>
      announce(manager, 'replan', { because: 'asked for by the manager', byId: by.id }, { key: 'replan' }),
    );
  }

  /** Asks which single change would remove most lateness. */
  help(by: SignedIn): Promise<TaskView> {
    return this.ask((manager) => announce(manager, 'what-would-help', { byId: by.id }, { key: 'what-would-help' }));
  }

  /** Where the job held in the hand would fit, frame by frame, and why not elsewhere; over a trial plan with its hours. */
  async fit(jobId: string, startsAt?: string, trialId?: string): Promise<FitView[]> {
    const { manager } = this.records;
    const plan = await new PlanRepository(manager).getPublished();
    const now = this.records.clock.now();
    const around = await readPlanAround(manager, [jobId], now);
    if (!around.jobs.has(jobId)) throw new LabError('job/unknown', 'There is no such job.', { jobId });
    const bookings = await new PlanRepository(manager).bookingsOf(plan.id);
    const calendar = calendarOf(await labSettings(manager), await closedDays(manager));
    const extra = trialId === undefined ? [] : extraShiftsOf(await new TrialRepository(manager).get(trialId));
    const opened = { ...around, windows: [...around.windows, ...extra] };
    const { notes } = plan;
    return fitsOf(jobId, { bookings, notes, around: opened, calendar, startsAt, nowMs: now.getTime() });
  }

  /** Why a job is where it is, and what makes it late. */
  async why(jobId: string): Promise<WhyView> {
    const plan = await new PlanRepository(this.records.manager).getPublished();
    const booking = (await new PlanRepository(this.records.manager).bookingsOf(plan.id)).find(
      (row) => row.jobId === jobId,
    );
    if (!booking) throw new LabError('plan/job-unknown', 'This job is not in the plan.', { jobId });
    const { frame, alternatives, causes } = notesOf(booking);
    return { jobId, whyThisFrame: frame, alternatives, causes };
  }

  /** Keeps a job on a frame, and at a time when one is given, until it is unpinned. */
  async pin(jobId: string, frameId: string, startsAt: string | null, by: SignedIn): Promise<void> {
    const fit = (await this.fit(jobId, startsAt ?? undefined)).find((one) => one.frameId === frameId);
    if (!fit) throw new LabError('frame/unknown', 'There is no such frame.', { frameId });
    if (!fit.fits)
      throw new LabError('plan/does-not-fit', `The job cannot go there. ${fit.reasons.join(' ')}`, {
        reasons: fit.reasons,
      });
    const set = { pinFrameId: frameId, pinStartAt: startsAt === null ? null : new Date(startsAt) };
    await this.change(jobId, 'job/pinned', set, null, by);
  }

  unpin(jobId: string, by: SignedIn): Promise<void> {
    return this.change(jobId, 'job/unpinned', { pinFrameId: null, pinStartAt: null }, null, by);
  }

  /** Keeps a job out of the plan. */
  hold(jobId: string, why: string, by: SignedIn): Promise<void> {
    return this.change(jobId, 'job/held', { holdWhy: why }, why, by);
  }

  unhold(jobId: string, by: SignedIn): Promise<void> {
    return this.change(jobId, 'job/unheld', { holdWhy: null }, null, by);
  }

  private async published(id: string): Promise<PublishedPlan> {
    if (this.kept?.plan.id === id) return this.kept;
    const plans = new PlanRepository(this.records.manager);
    const plan = await plans.get(id);
    const moved = plan.notes.changes?.length ? plan : await plans.findNewestThatMoved();
    return (this.kept = { plan, moved, bookings: await plans.bookingsOf(id) });
  }

  private ask(announceIt: (manager: EntityManager) => Promise<string>): Promise<TaskView> {
    return this.records.quietly(async (manager) => getTaskView(manager, await announceIt(manager)));
  }

  private change(
    jobId: string,
    kind: 'job/pinned' | 'job/unpinned' | 'job/held' | 'job/unheld',
    set: Partial<JobEntity>,
    why: string | null,
    by: SignedIn,
  ): Promise<void> {
    return this.records.act(by.id, async ({ manager, record }) => {
      const before = await new PlanJobRepository(manager).steer(jobId, set);
      await record({
        kind,
        subjectId: jobId,
        why,
        before,
        after: { ...set },
      });
    });
  }
}
