import { randomUUID } from 'node:crypto';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { notify } from '../platform/live-events.js';
import { insertRows, updateRows } from '../platform/write-rows.js';
import type { TrialOutcome } from './trial-outcome.js';
import { TrialPlanEntity } from './trial-plan.entity.js';

/** Trial plans: what-if copies of the plan. */
export class TrialRepository {
  constructor(private readonly manager: EntityManager) {}

  open(): Promise<TrialPlanEntity[]> {
    return this.manager.find(TrialPlanEntity, { where: { state: 'open' }, order: { createdAt: 'DESC' } });
  }

  /** @throws LabError `trial/unknown` */
  async get(id: string): Promise<TrialPlanEntity> {
    const row = await this.manager.findOneBy(TrialPlanEntity, { id });
    if (!row) throw new LabError('trial/unknown', 'There is no such trial plan.', { trialId: id });
    return row;
  }

  async add(
    row: Pick<TrialPlanEntity, 'name' | 'ownerId' | 'basedOnPlanId' | 'factsStamp' | 'createdAt'>,
  ): Promise<TrialPlanEntity> {
    const whole = { ...row, id: randomUUID(), edits: [], outcome: null, state: 'open' as const };
    await insertRows(this.manager, TrialPlanEntity, [whole]);
    return this.get(whole.id);
  }

  /** Keeps what the planner made of a trial, unless it was changed while it was planned: then another run is under way. */
  async storeOutcome({ id, version }: TrialPlanEntity, outcome: TrialOutcome): Promise<void> {
    await updateRows(this.manager, TrialPlanEntity, { id, version, state: 'open' }, { outcome });
    await notify(this.manager, { topic: 'plan', id });
  }

  /** Changes an open trial unless someone did so since it was read. @throws LabError `trial/changed-meanwhile` */
  async change({ id, version }: TrialPlanEntity, set: Partial<TrialPlanEntity>): Promise<void> {
    const next = { ...set, version: version + 1 };
    const changed = await updateRows(this.manager, TrialPlanEntity, { id, version, state: 'open' }, next);
    if (changed === 0) {
      throw new LabError('trial/changed-meanwhile', 'This trial plan was changed meanwhile. Reload it and try again.');
    }
    await notify(this.manager, { topic: 'plan', id });
  }
}
