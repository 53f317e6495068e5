import { randomUUID } from 'node:crypto';
import type { BatchBody, JobView, MethodView, RequestView, SaveItemBody } from '#libs/contract/src/index.js';
import { addPerson, factsStamp, JobEntity, PersonEntity, PlanRepository } from '#libs/records/src/index.js';
import { hashPassword } from '#apps/api/src/platform/sessions.service.js';
import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import { MATERIALS } from '#seed/library/materials.js';
import { METHODS } from '#seed/library/methods.js';
import type { Client } from '../support/client.js';
import { TEST_PASSWORD, TEST_TEAM } from '../support/lab.js';
import type { Lab } from '../support/lab.js';
import { CELL_5KN, FRAME_10KN, GRIP_5KN } from './register-items.js';
import { labClock } from '../support/lab-clock.js';

const REVIEWED = { methodAgreed: true, capabilityShown: true, specimensAgreed: true, disposalAgreed: true };

/** A small lab at work: one method, frames with their own cell and grips, and people who may run it. */
export interface BenchLab {
  lab: Lab;
  requester: Client;
  manager: Client;
  technician: Client;
  batch: BatchBody;
  /** Ids by tag. */
  items: Record<string, string>;
}

/** The items of a train on a frame, by tag. */
export interface TrainTags {
  frame: string;
  cell: string;
  grips: string;
}

export const FIRST: TrainTags = { frame: 'UF-10', cell: 'LC-5K-1', grips: 'GP-5K-1' };

/** @param trains how many frames, each with a cell and grips of its own */
export async function benchLab(lab: Lab, trains = 1): Promise<BenchLab> {
  const [requester, manager, technician] = await Promise.all(
    ['requester', 'manager', 'technician'].map((who) => lab.signIn(who)),
  );
  const bench = {
    lab,
    requester: requester!,
    manager: manager!,
    technician: technician!,
    items: {} as Record<string, string>,
  };
  for (let number = 1; number <= trains; number++) await addTrain(bench, trainTags(number));
  const { id } = await lab.records.manager.findOneByOrFail(PersonEntity, { email: 'technician@northmoor.example' });
  await allow(lab, id);
  return { ...bench, batch: await plasticBatch(bench.manager) };
}

export function trainTags(number: number): TrainTags {
  return number === 1 ? FIRST : { frame: `UF-10-${number}`, cell: `LC-5K-${number}`, grips: `GP-5K-${number}` };
}

async function addTrain(
  { manager, items }: Pick<BenchLab, 'manager' | 'items'>,
  { frame, cell, grips }: TrainTags,
): Promise<void> {
  items[frame] = await addItem(manager, { ...FRAME_10KN, tag: frame });
  items[cell] = await addItem(manager, { ...CELL_5KN, tag: cell });
  items[grips] = await addItem(manager, { ...GRIP_5KN, tag: grips });
  await calibrate(manager, items[cell]);
}

export async function addItem(manager: Client, item: SaveItemBody): Promise<string> {
  const { status, body } = await manager.post<{ id: string }>('/items', item);
  if (status !== 201) throw new Error(`${item.tag}: ${JSON.stringify(body)}`);
  return body.id;
}

/** From 5 N to 5 kN: class 0.5 from yesterday on, unless another class or time is said. */
export async function calibrate(
  manager: Client,
  cellId: string,
  { daysAgo = 1, className = '0.5' }: { daysAgo?: number; className?: string } = {},
): Promise<void> {
  const { status, body } = await manager.post(`/items/${cellId}/calibrations`, {
    ...{ standard: 'ISO 7500-1', certificateNumber: 'C-1', laboratory: 'Northmoor calibration', asFound: 'within' },
    performedAt: new Date(labClock.nowMs() - daysAgo * 86_400_000).toISOString(),
    ranges: ['tension', 'compression'].map((direction) => ({
      direction,
      className,
      from: 5,
      to: 5000,
      unit: 'N',
    })),
  });
  if (status >= 300) throw new Error(JSON.stringify(body));
}

/** Authorised for ISO 527-2 since yesterday, and at work for a month. */
export async function allow({ records }: Lab, personId: string): Promise<void> {
  const now = labClock.now();
  await records.query(
    `insert into roster_shift (id, person_id, starts_at, ends_at)
     values ($1, $2, $3::timestamptz - interval '1 hour', $3::timestamptz + interval '30 days')`,
    [randomUUID(), personId, now],
  );
  await records.query(
    `insert into authorisation (id, person_id, method_code, from_at, granted_by)
     values ($1, $2, 'iso-527-2', $3::timestamptz - interval '1 day', $2)`,
    [randomUUID(), personId, now],
  );
}

/** Another technician who may run the method. */
export async function addTechnician(lab: Lab, name: string): Promise<Client> {
  const id = randomUUID();
  const email = `${name}@northmoor.example`;
  const passwordHash = await hashPassword(TEST_PASSWORD);
  await lab.records.transaction((manager) =>
    addPerson(manager, { id, name, email, roles: ['technician'], passwordHash, createdAt: labClock.now() }),
  );
  await allow(lab, id);
  return lab.signIn(email);
}

async function plasticBatch(manager: Client): Promise<BatchBody> {
  const published = METHODS.find(({ id }) => id === 'iso-527-2')!;
  // This small lab has no extensometer and no climate chamber.
  const plastics = {
    ...published,
    conditioning: null,
    strain: published.strain && { ...published.strain, demandedFor: [] },
  };
  const method = await manager.post<MethodView>('/methods', { data: plastics });
  const material = await manager.post<{ id: string }>('/materials', {
    data: MATERIALS.find(({ id }) => id === 'pa6-gf30')!,
  });
  const geometry = {
    shape: 'rectangle',
    widthMm: 10,
    thicknessMm: 4,
    parallelLengthMm: 80,
    gripSeparationMm: 115,
    lengthMm: 170,
    endWidthMm: 20,
    endThicknessMm: 4,
  };
  return {
    ...{ label: 'Rear carrier bracket', methodId: method.body.id, materialId: material.body.id, specimenCount: 3 },
    ask: {
      strength: { low: 60, high: 90 }, // 90 MPa × 40 mm² = 3600 N: within cell and grips of 5 kN, margin of 20 % included
      ...{ geometry, endShape: 'flat', results: ['peak-stress'], temperatureC: null, hazards: [], confirmed: [] },
      options: { contactExtensometer: true, crossheadStrain: true, lowerForceClass: false },
    },
    asTyped: {},
  };
}

/** A request all the way until its specimens are here. */
export async function readyRequest(
  { requester, manager, batch }: BenchLab,
  title = 'Bracket strength',
  batches = [batch],
): Promise<RequestView> {
  const draft = await requester.post<RequestView>('/requests', { title, teamId: TEST_TEAM.id, batches });
  const { id } = draft.body;
  await requester.post(`/requests/${id}/submit`);
  const accepted = await manager.post<RequestView>(`/requests/${id}/accept`, REVIEWED);
  const specimenIds = accepted.body.batches.flatMap(({ specimens }) => specimens.map((specimen) => specimen.id));
  const here = await manager.post<RequestView>(`/requests/${id}/arrivals`, { specimenIds });
  if (here.status !== 200) throw new Error(JSON.stringify([draft.body, accepted.body, here.body]));
  return here.body;
}

/** Publishes a plan by hand: every ready job after the other, on these trains in turn. */
export async function publishPlan({ lab, items }: BenchLab, trains: readonly TrainTags[] = [FIRST]): Promise<void> {
  await lab.acting.act(null, async (act) => {
    const { manager } = act;
    const jobs = await manager.find(JobEntity, { where: { state: 'ready' }, order: { reference: 'ASC' } });
    const bookings = jobs.map((job, at) => {
      const { frame, cell, grips } = trains[at % trains.length]!;
      const startsMs = labClock.nowMs() + Math.floor(at / trains.length) * 120 * MS_PER_MINUTE;
      return {
        ...{
          jobId: job.id,
          frameId: items[frame]!,
          kind: 'job' as const,
          changeoverMin: 30,
          technicianId: null,
          why: {},
        },
        ...{
          setupAt: new Date(startsMs),
          startsAt: new Date(startsMs + 30 * MS_PER_MINUTE),
          endsAt: new Date(startsMs + 90 * MS_PER_MINUTE),
        },
        train: [
          { role: 'load-cell', itemId: items[cell]! },
          { role: 'ends', itemId: items[grips]! },
        ],
      };
    });
    const none = { weightedLatenessHours: 0, lateJobs: 0, changeoverHours: 0, movedHours: 0, jobs: bookings.length };
    const notes = { figures: none, unplaced: [], load: [], pools: [], freezeUntil: '', horizonTo: '' };
    await new PlanRepository(manager).publish(
      {
        stamp: await factsStamp(manager),
        madeAt: act.now(),
        madeBy: 'planner',
        cause: 'a story',
        notes,
        bookings,
      },
      act,
    );
  });
}

/** Confirms every step of the sheet by its tag. */
export async function rig(technician: Client, job: JobView): Promise<JobView> {
  let now = job;
  for (const { item } of job.setup.filter(({ confirmed }) => !confirmed)) {
    now = (await technician.post<JobView>(`/jobs/${job.id}/confirm`, { tag: item.tag })).body;
  }
  return now;
}

/** Passes the shift check with a reading that is exact, and ticks whatever else is asked. */
export async function check(technician: Client, job: JobView): Promise<JobView> {
  const cellId = job.train.find(({ role }) => role === 'load-cell')!.itemId;
  let now = (
    await technician.post<JobView>(`/jobs/${job.id}/shift-check`, { cellId, reference: 1, reading: 1, unit: 'kN' })
  ).body;
  for (const { key } of job.checks.filter(({ kind, done }) => kind === 'tick' && !done)) {
    now = (await technician.post<JobView>(`/jobs/${job.id}/tick`, { key })).body;
  }
  return now;
}
