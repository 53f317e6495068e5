import { randomUUID } from 'node:crypto';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { insertRows, updateRows } from '../platform/write-rows.js';
import type { Act } from '../record/act.js';
import { factsChangedSince, factsChangedSql } from '../platform/facts.js';
import { prepared } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import type { PlanNotes } from './plan-notes.js';
import { BookingEntity, BookingItemEntity, PlanEntity } from './plan.entity.js';
import type { NewBooking } from './plan.entity.js';

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

  /** The newest plan that moved a job, or null when none did. */
  findNewestThatMoved(): Promise<PlanEntity | null> {
    return this.manager
      .createQueryBuilder(PlanEntity, 'plan')
      .where(`jsonb_array_length(coalesce(plan.figures -> 'changes', '[]')) > 0`)
      .orderBy('plan.version', 'DESC')
      .limit(1)
      .getOne();
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
    await updateRows(this.manager, BookingItemEntity, { live: true }, { live: false });
    await updateRows(this.manager, BookingEntity, { live: true }, { live: false });
    await insertRows(this.manager, PlanEntity, [row]);
    await this.insertBookings(row.id, plan.bookings);
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

  private async insertBookings(planId: string, bookings: readonly NewBooking[]): Promise<void> {
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
    await insertRows(this.manager, BookingEntity, rows);
    await insertRows(this.manager, BookingItemEntity, items);
  }
}

const HEAD: Prepared = {
  name: 'plan-head',
  text: `select id, ${factsChangedSql('facts_stamp')} as stale from (select * from plan order by version desc limit 1) newest`,
};

function refuseNoPlan(): never {
  throw new LabError('plan/none', 'There is no plan yet. It is made as soon as the first request is accepted.');
}
