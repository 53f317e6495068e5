import { calendarOf } from '#libs/calendar/src/index.js';
import type { TrialEdit, TrialView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import {
  announce,
  applyEdits,
  closedDays,
  factsChangedSince,
  LabRecords,
  labSettings,
  readPlanAround,
  PlanRepository,
  revived,
  TrialRepository,
} from '#libs/records/src/index.js';
import type { TrialOutcome, TrialPlanEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import { extraShiftsOf, fitsOf } from './fits-of.js';
import { planView } from './plan-view.js';
import { editProblems } from './edit-problems.js';

/** Trial plans: changes are tried on a copy, compared with the published plan, and then published or dropped. */
@Injectable()
export class TrialsService {
  constructor(private readonly records: LabRecords) {}

  async list(): Promise<TrialView[]> {
    const open = await new TrialRepository(this.records.manager).open();
    return Promise.all(open.map((trial) => this.viewOf(trial)));
  }

  async view(id: string): Promise<TrialView> {
    return this.viewOf(await new TrialRepository(this.records.manager).get(id));
  }

  async begin(name: string, by: SignedIn): Promise<TrialView> {
    const trial = await this.records.quietly(async (manager) => {
      const plan = await new PlanRepository(manager).getPublished();
      const createdAt = this.records.clock.now();
      const row = { name, ownerId: by.id, basedOnPlanId: plan.id, factsStamp: plan.factsStamp, createdAt };
      const added = await new TrialRepository(manager).add(row);
      await this.planAnew(manager, added.id);
      return added;
    });
    return this.viewOf(trial);
  }

  /** @throws LabError `trial/edit-refused` with every reason */
  async addEdit(id: string, edit: TrialEdit): Promise<TrialView> {
    await this.records.quietly(async (manager) => {
      const trial = await new TrialRepository(manager).get(id);
      const reasons = await this.reasonsAgainst(manager, edit, trial);
      if (reasons.length > 0) throw new LabError('trial/edit-refused', reasons.join(' '), { reasons });
      await new TrialRepository(manager).change(trial, { edits: [...trial.edits, edit] });
      await this.planAnew(manager, id);
    });
    return this.view(id);
  }

  /** @throws LabError `trial/edit-unknown` */
  async removeEdit(id: string, index: number): Promise<TrialView> {
    await this.records.quietly(async (manager) => {
      const trial = await new TrialRepository(manager).get(id);
      if (index >= trial.edits.length) {
        throw new LabError(
          'trial/edit-unknown',
          `This trial plan has ${trial.edits.length} changes; there is none at ${index}.`,
        );
      }
      await new TrialRepository(manager).change(trial, { edits: trial.edits.filter((_, at) => at !== index) });
      await this.planAnew(manager, id);
    });
    return this.view(id);
  }

  /** Plans it anew on the lab as it is now; until then it cannot be published. */
  async replan(id: string): Promise<TrialView> {
    await this.records.quietly(async (manager) => {
      const trials = new TrialRepository(manager);
      await trials.change(await trials.get(id), {});
      await this.planAnew(manager, id);
    });
    return this.view(id);
  }

  async drop(id: string): Promise<void> {
    await this.records.quietly(async (manager) => {
      const trials = new TrialRepository(manager);
      await trials.change(await trials.get(id), { state: 'dropped' });
    });
  }

  /**
   * Makes the trial plan the published one and its changes true, in one transaction.
   *
   * @throws LabError `trial/not-ready` while it is computed, `trial/has-refused-edits`, `plan/stale-facts` when the lab changed meanwhile
   */
  async publish(id: string, by: SignedIn): Promise<TrialView> {
    await this.records.act(by.id, async (act) => {
      const { manager, record } = act;
      const trial = await new TrialRepository(manager).get(id);
      const outcome = readyOutcome(trial);
      const plan = await new PlanRepository(manager).publish(
        {
          ...{ stamp: outcome.stamp, madeAt: new Date(outcome.madeAt), madeBy: by.id },
          cause: `Trial plan ${trial.name}`,
          notes: outcome.notes,
          bookings: revived(outcome.bookings),
        },
        act,
      );
      await applyEdits(manager, trial.edits);
      await new TrialRepository(manager).change(trial, { state: 'published' });
      await record({
        kind: 'trial/published',
        subjectId: plan.id,
        after: { trial: id, version: plan.version, edits: trial.edits },
      });
    });
    return this.view(id);
  }

  private async planAnew(manager: EntityManager, trialId: string): Promise<void> {
    await announce(manager, 'plan-trial', { trialId }, { key: trialId });
  }

  private async reasonsAgainst(manager: EntityManager, edit: TrialEdit, trial: TrialPlanEntity): Promise<string[]> {
    const plan = await new PlanRepository(manager).getPublished();
    const now = this.records.clock.now();
    const around = await readPlanAround(manager, [], now);
    const problems = await editProblems(manager, edit, around, now.getTime());
    if (problems.length > 0 || edit.kind !== 'move') return problems;
    const bookings = await new PlanRepository(manager).bookingsOf(plan.id);
    const { notes } = plan;
    const calendar = calendarOf(await labSettings(manager), await closedDays(manager));
    const opened = { ...around, windows: [...around.windows, ...extraShiftsOf(trial)] };
    const fit = fitsOf(edit.jobId, {
      bookings,
      notes,
      around: opened,
      calendar,
      startsAt: edit.startsAt,
      nowMs: now.getTime(),
    });
    return fit.find(({ frameId }) => frameId === edit.frameId)?.reasons ?? ['There is no such frame.'];
  }

  private async viewOf(trial: TrialPlanEntity): Promise<TrialView> {
    const { manager } = this.records;
    const base = await new PlanRepository(manager).get(trial.basedOnPlanId);
    const outcome = trial.outcome;
    const open = trial.state === 'open';
    const pending = open && outcome?.forVersion !== trial.version;
    const stale = open && outcome !== null && (await factsChangedSince(manager, outcome.stamp));
    return {
      ...{
        id: trial.id,
        name: trial.name,
        state: trial.state,
        version: trial.version,
        basedOnVersion: base.version,
        pending,
        stale,
      },
      edits: trial.edits,
      plan: outcome && (await this.planOf(trial, outcome, stale)),
      comparison: outcome?.comparison ?? null,
      refused: pending ? [] : (outcome?.refused ?? []), // by place in the list, which has changed since
    };
  }

  private async planOf(trial: TrialPlanEntity, outcome: TrialOutcome, stale: boolean) {
    const { manager } = this.records;
    const bookings = revived(outcome.bookings).map((booking, index) => ({ ...booking, id: `${trial.id}-${index}` }));
    const jobIds = bookings.flatMap(({ jobId }) => jobId ?? []);
    return planView({
      head: {
        id: trial.id,
        version: 0,
        publishedAt: new Date(outcome.madeAt),
        madeBy: trial.ownerId,
        cause: trial.name,
        stale,
      },
      notes: outcome.notes,
      around: await readPlanAround(manager, jobIds, this.records.clock.now()),
      settings: await labSettings(manager),
      closedDays: await closedDays(manager),
      nowMs: this.records.clock.nowMs(),
      bookings,
    });
  }
}

function readyOutcome(trial: TrialPlanEntity): TrialOutcome {
  const outcome = trial.outcome;
  if (trial.state !== 'open')
    throw new LabError('trial/ended', `This trial plan was ${trial.state} before.`, { state: trial.state });
  if (!outcome || outcome.forVersion !== trial.version) {
    throw new LabError('trial/not-ready', 'This trial plan is still being computed. Publish it when it stands.');
  }
  if (outcome.refused.length > 0) {
    throw new LabError(
      'trial/has-refused-edits',
      'Some changes of this trial plan cannot be made. Take them out first.',
      { refused: outcome.refused },
    );
  }
  return outcome;
}
