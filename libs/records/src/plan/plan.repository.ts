import { randomUUID } from 'node:crypto';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import type { Act } from '../record/act.js';
import { factsChangedSince, factsChangedSql } from '../platform/facts.js';
import { notify } from '../platform/live-events.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import type { TrialOutcome } from './trial-outcome.js';
import type { PlanNotes } from './plan-notes.js';
import { BookingEntity, BookingItemEntity, PlanEntity, TrialPlanEntity } from './plan.entity.js';

/** What is kept of one booking of a new plan. */
export type NewBooking = Omit<BookingEntity, 'id' | 'planId' | 'live'>;

export interface NewPlan {
  /** Stamp of the facts that it was made from. */
  stamp: string;
  madeAt: Date;
  /** `planner`, or the id of the person who published a trial plan. */
  madeBy: string;
  cause: string;
  notes: PlanNotes;
  bookings: readonly NewBooking[];
}

/** Held while a plan is published, so that two planners never publish over each other. */
const PUBLISH_LOCK = 732_202;

/** The published plan and its predecessors, through the manager of the caller's transaction. */
export class PlanRepository {
  constructor(private readonly manager: EntityManager) {}

  /** The plan in force, or null before the first. */
  findPublished(): Promise<PlanEntity | null> {
    return this.manager.findOne(PlanEntity, { where: {}, order: { version: 'DESC' } });
  }

  /** @throws LabError `plan/none` before the first plan */
  async getPublished(): Promise<PlanEntity> {
    return (await this.findPublished()) ?? refuseNoPlan();
  }

  /** Which plan is in force, and whether something changed that it does not know. @throws LabError `plan/none` */
  async headOfPublished(): Promise<{ id: string; stale: boolean }> {
    const [head] = await prepared<{ id: string; stale: boolean }>(this.manager, HEAD, []);
    return head ?? refuseNoPlan();
  }

  /** @throws LabError `plan/unknown` */
  async get(id: string): Promise<PlanEntity> {
    const plan = await this.manager.findOneBy(PlanEntity, { id });
    if (!plan) throw new LabError('plan/unknown', 'There is no such plan.', { planId: id });
    return plan;
  }

  bookingsOf(planId: string): Promise<BookingEntity[]> {
    return this.manager.find(BookingEntity, { where: { planId }, order: { setupAt: 'ASC' } });
  }

  versions(limit: number): Promise<PlanEntity[]> {
    return this.manager.find(PlanEntity, { order: { version: 'DESC' }, take: limit });
  }

  /**
   * Makes a plan the one in force, in this act.
   *
   * @returns the new version
   * @throws LabError `plan/stale-facts` when a fact changed since the stamp: the plan would not fit the lab any more
   */
  async publish(plan: NewPlan, { now, record }: Act): Promise<PlanEntity> {
    await this.manager.query('select pg_advisory_xact_lock($1)', [PUBLISH_LOCK]);
    if (await factsChangedSince(this.manager, plan.stamp)) {
      throw new LabError('plan/stale-facts', 'The lab changed while this plan was made. It is made anew.');
    }
    const before = await this.findPublished();
    const row = this.manager.create(PlanEntity, {
      id: randomUUID(),
      version: (before?.version ?? 0) + 1,
      factsStamp: plan.stamp,
      madeAt: plan.madeAt,
      publishedAt: now(),
      madeBy: plan.madeBy,
      cause: plan.cause,
      notes: plan.notes,
    });
    await this.manager.update(BookingItemEntity, { live: true }, { live: false });
    await this.manager.update(BookingEntity, { live: true }, { live: false });
    await this.manager.insert(PlanEntity, row);
    await this.keepBookings(row.id, plan.bookings);
    await record({
      actorId: plan.madeBy === 'planner' ? null : plan.madeBy,
      kind: 'plan/published',
      subjectId: row.id,
      before: before && { version: before.version },
      after: { version: row.version, figures: plan.notes.figures },
      why: plan.cause,
    });
    return row;
  }

  private async keepBookings(planId: string, bookings: readonly NewBooking[]): Promise<void> {
    const rows = bookings.map((booking) => ({ ...booking, id: randomUUID(), planId, live: true }));
    const items = rows.flatMap((row) =>
      [...new Set(row.train.map(({ itemId }) => itemId))].map((itemId) => ({
        bookingId: row.id,
        itemId,
        live: true,
        startsAt: row.setupAt,
        endsAt: row.endsAt,
      })),
    );
    // In pieces: one statement carries at most 65 535 values.
    for (let at = 0; at < rows.length; at += 1_000)
      await this.manager.insert(BookingEntity, rows.slice(at, at + 1_000) as never);
    for (let at = 0; at < items.length; at += 5_000)
      await this.manager.insert(BookingItemEntity, items.slice(at, at + 5_000));
  }
}

const HEAD: Prepared = {
  name: 'plan-head',
  text: `select id, ${factsChangedSql('facts_stamp')} as stale from (select * from plan order by version desc limit 1) newest`,
};

function refuseNoPlan(): never {
  throw new LabError('plan/none', 'There is no plan yet. It is made as soon as the first request is accepted.');
}

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

  async add(row: Pick<TrialPlanEntity, 'name' | 'ownerId' | 'basedOnPlanId' | 'factsStamp'>): Promise<TrialPlanEntity> {
    const whole = { ...row, id: randomUUID(), edits: [], outcome: null, state: 'open' as const };
    await this.manager.insert(TrialPlanEntity, whole);
    return this.get(whole.id);
  }

  /** Keeps what the planner made of a trial, unless it was changed while it was planned: then another run is under way. */
  async keepOutcome({ id, version }: TrialPlanEntity, outcome: TrialOutcome): Promise<void> {
    await this.manager.update(TrialPlanEntity, { id, version, state: 'open' }, { outcome } as never);
    await notify(this.manager, { topic: 'plan', id });
  }

  /** Changes an open trial unless someone did so since it was read. @throws LabError `trial/changed-meanwhile` */
  async change({ id, version }: TrialPlanEntity, set: Partial<TrialPlanEntity>): Promise<void> {
    const next = { ...set, version: version + 1 };
    const { affected } = await this.manager.update(TrialPlanEntity, { id, version, state: 'open' }, next as never);
    if (affected === 0) {
      throw new LabError('trial/changed-meanwhile', 'This trial plan was changed meanwhile. Reload it and try again.');
    }
    await notify(this.manager, { topic: 'plan', id });
  }
}
