import { addMonths } from '#libs/calendar/src/index.js';
import { In, MoreThan } from 'typeorm';
import type { DataSource, EntityManager } from 'typeorm';
import { CalibrationEntity } from '../calibration/calibration.entity.js';
import { JobEntity } from '../jobs/job.entity.js';
import { materialOf, methodOf } from '../methods/method-mapping.js';
import { MaterialEntity } from '../methods/material.entity.js';
import { MethodEntity } from '../methods/method.entity.js';
import { closedDays } from '../people/closed-days.js';
import { labSettings } from '../people/lab-settings.repository.js';
import { factsStamp } from '../platform/facts.js';
import { findByIds } from '../platform/find-by-ids.js';
import { byId } from '../platform/grouped.js';
import { labOf } from '../register/read-lab.js';
import { spanOf } from '../register/item-mapping.js';
import { ItemWindowEntity } from '../register/item-window.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { RigLinkEntity } from '../register/rig.entity.js';
import { askOf } from '../requests/ask-mapping.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { RequestEntity } from '../requests/request.entity.js';
import { SpecimenEntity } from '../requests/specimen.entity.js';
import { DurationEntity } from '../results/curve.entity.js';
import { BookingEntity, PlanEntity } from './plan.entity.js';
import type { OpenJob, PlanFacts } from './plan-facts.js';

/** States of a job that the plan has to reckon with. */
const OPEN = ['waiting', 'ready', 'taken', 'rigged', 'running', 'paused', 'blocked'] as const;
const ON_A_FRAME: readonly string[] = ['taken', 'rigged', 'running', 'paused'];
/** Learned durations rest on so many finished jobs at the most. */
const DURATIONS_READ = 2_000;

/** Reads everything that a plan is made from in one consistent look. */
export function readPlanFacts(records: DataSource, nowMs: number): Promise<PlanFacts> {
  return records.transaction('REPEATABLE READ', async (manager) => {
    const stamp = await factsStamp(manager);
    const lab = await labOf(manager, nowMs);
    const settings = await labSettings(manager);
    return {
      stamp,
      nowMs,
      settings,
      lab,
      closedDays: await closedDays(manager),
      extraShifts: (
        await manager.findBy(ItemWindowEntity, { kind: 'extra-shift', endsAt: MoreThan(new Date(nowMs)) })
      ).map((row) => ({ frameId: row.itemId, ...spanOf(row) })),
      rigs: rigsWithPlaces(lab.rigs, await manager.find(RigLinkEntity)),
      jobs: await openJobs(manager, new Date(nowMs)),
      published: await publishedPlan(manager),
      dueDates: await dueDates(manager, settings.timeZone),
      durations: await manager.find(DurationEntity, { order: { at: 'DESC' }, take: DURATIONS_READ }),
    };
  });
}

function rigsWithPlaces(rigs: PlanFacts['lab']['rigs'], links: readonly RigLinkEntity[]): PlanFacts['rigs'] {
  return rigs.map(({ frameId, chamberC }) => ({
    frameId,
    chamberC,
    links: links.filter((link) => link.frameId === frameId).map(({ role, itemId }) => ({ role, itemId })),
  }));
}

async function openJobs(manager: EntityManager, now: Date): Promise<OpenJob[]> {
  const jobs = await manager.find(JobEntity, { where: { state: In([...OPEN]) }, order: { reference: 'ASC' } });
  const batches = byId(
    await findByIds(
      manager,
      BatchEntity,
      jobs.map(({ batchId }) => batchId),
    ),
  );
  const requests = byId(
    await findByIds(
      manager,
      RequestEntity,
      jobs.map(({ requestId }) => requestId),
    ),
  );
  const methods = byId(await manager.find(MethodEntity));
  const materials = byId(await manager.find(MaterialEntity));
  const left = await specimensLeft(manager, [...batches.keys()]);
  return jobs.map((job) => {
    const batch = batches.get(job.batchId)!;
    const request = requests.get(job.requestId)!;
    const method = methods.get(batch.methodId)!;
    const material = batch.materialId === null ? null : (materials.get(batch.materialId) ?? null);
    return {
      id: job.id,
      reference: job.reference,
      requestId: request.id,
      requestReference: request.reference,
      title: batch.label ? `${request.title}: ${batch.label}` : request.title,
      state: job.state,
      ask: askOf(batch, method, material),
      method: methodOf(method),
      material: material && materialOf(material),
      weight: request.weight,
      dueMs: request.dueAt?.getTime() ?? null,
      releasedMs: job.releasedAt?.getTime() ?? null,
      expectedMs: request.specimensAt?.getTime() ?? null,
      specimensLeft: left.get(batch.id) ?? batch.specimenCount,
      hold: job.holdWhy !== null,
      pin: job.pinFrameId === null ? null : { frameId: job.pinFrameId, startMs: job.pinStartAt?.getTime() ?? null },
      on: whereItIs(job, now),
    };
  });
}

function whereItIs(job: JobEntity, now: Date): OpenJob['on'] {
  if (!ON_A_FRAME.includes(job.state) || job.frameId === null) return null;
  return {
    frameId: job.frameId,
    technicianId: job.technicianId,
    train: job.train.map(({ role, itemId }) => ({ role, itemId })),
    sinceMs: (job.startedAt ?? job.takenAt ?? now).getTime(),
    started: job.startedAt !== null,
  };
}

async function specimensLeft(manager: EntityManager, batchIds: readonly string[]): Promise<Map<string, number>> {
  if (batchIds.length === 0) return new Map();
  const rows = await manager
    .createQueryBuilder(SpecimenEntity, 'specimen')
    .select('specimen.batchId', 'batchId')
    .addSelect(`count(*) filter (where specimen.fate in ('expected', 'arrived'))::int`, 'left')
    .where({ batchId: In([...batchIds]) })
    .groupBy('specimen.batchId')
    .getRawMany<{ batchId: string; left: number }>();
  return new Map(rows.map(({ batchId, left }) => [batchId, left]));
}

async function publishedPlan(manager: EntityManager): Promise<PlanFacts['published']> {
  const plan = await manager.findOne(PlanEntity, { where: {}, order: { version: 'DESC' } });
  if (!plan) return null;
  const rows = await manager.findBy(BookingEntity, { planId: plan.id });
  const bookings = rows.flatMap(({ jobId, frameId, setupAt, startsAt, train, technicianId }) =>
    jobId === null || frameId === null
      ? []
      : [{ jobId, frameId, setupMs: setupAt.getTime(), startMs: startsAt.getTime(), train, technicianId }],
  );
  const visits = rows
    .filter(({ kind }) => kind === 'calibration-visit')
    .flatMap(({ startsAt, train }) => train.map(({ itemId }) => ({ itemId, startMs: startsAt.getTime() })));
  return { id: plan.id, version: plan.version, bookings, visits, order: plan.notes.order ?? [] };
}

/** The newest calibration of each item counts; the next is taken to hold as long as the item's interval says. */
async function dueDates(manager: EntityManager, zone: string): Promise<PlanFacts['dueDates']> {
  const items = await manager.findBy(ItemEntity, { needsCalibration: true, state: 'in-service' });
  const newest = new Map<string, CalibrationEntity>();
  for (const row of await manager.find(CalibrationEntity, { order: { performedAt: 'ASC', enteredAt: 'ASC' } }))
    newest.set(row.itemId, row);
  return items.flatMap(({ id, calibrationIntervalMonths }) => {
    const last = newest.get(id);
    if (!last) return [];
    const dueMs = last.dueAt.getTime();
    return [{ itemId: id, dueMs, holdsMs: addMonths(dueMs, calibrationIntervalMonths ?? 12, zone) - dueMs }];
  });
}
