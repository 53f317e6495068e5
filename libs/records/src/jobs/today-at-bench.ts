import type { PersonRef } from '#libs/contract/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';
import { BookingEntity } from '../plan/plan.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { RequestEntity } from '../requests/request.entity.js';
import { JobEntity } from './job.entity.js';
import { ON_A_FRAME } from './job.repository.js';

/** A job as the bench lists it. */
export interface JobToday {
  job: JobEntity;
  /** Its place in the published plan. */
  booking: BookingEntity | null;
  title: string;
  requestReference: string;
  frameTag: string | null;
  technician: PersonRef | null;
  /** Whether its time in the plan touches the next 24 h, or it is on a frame. */
  isToday: boolean;
}

const DAY_MS = 86_400_000;

/** Jobs on frames, and the ready ones of the plan, by when they begin. */
export async function todayAtBench(manager: EntityManager, now: Date): Promise<JobToday[]> {
  const bookings = await manager.find(BookingEntity, { where: { live: true, kind: 'job' }, order: { setupAt: 'ASC' } });
  const planned = bookings.flatMap(({ jobId }) => jobId ?? []);
  const jobs = await manager.find(JobEntity, { where: [{ id: In(planned) }, { state: In([...ON_A_FRAME]) }] });
  const requests = byId(await manager.findBy(RequestEntity, { id: In(jobs.map(({ requestId }) => requestId)) }));
  const batches = byId(await manager.findBy(BatchEntity, { id: In(jobs.map(({ batchId }) => batchId)) }));
  const frames = byId(await manager.findBy(ItemEntity, { kind: 'frame' }));
  const people = byId(
    await manager.findBy(PersonEntity, { id: In(jobs.flatMap(({ technicianId }) => technicianId ?? [])) }),
  );
  const rows = jobs.map((job) => {
    const booking = bookings.find(({ jobId }) => jobId === job.id) ?? null;
    const request = requests.get(job.requestId)!;
    const label = batches.get(job.batchId)?.label;
    const person = people.get(job.technicianId ?? '');
    return {
      ...{ job, booking, requestReference: request.reference },
      title: label ? `${request.title}: ${label}` : request.title,
      frameTag: frames.get(job.frameId ?? booking?.frameId ?? '')?.tag ?? null,
      technician: person ? { id: person.id, name: person.name } : null,
      isToday:
        isOnFrame(job) ||
        (booking !== null && booking.setupAt.getTime() < now.getTime() + DAY_MS && booking.endsAt > now),
    };
  });
  return rows.sort((a, b) => beginOf(a) - beginOf(b) || (a.job.reference < b.job.reference ? -1 : 1));
}

function isOnFrame({ state }: JobEntity): boolean {
  return (ON_A_FRAME as readonly string[]).includes(state);
}

function beginOf({ booking, job }: Pick<JobToday, 'booking' | 'job'>): number {
  return (booking?.setupAt ?? job.takenAt)?.getTime() ?? 0;
}

function byId<Row extends { id: string }>(rows: readonly Row[]): Map<string, Row> {
  return new Map(rows.map((row) => [row.id, row]));
}
