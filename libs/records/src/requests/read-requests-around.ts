import type { PersonRef, TeamRef } from '#libs/contract/src/index.js';
import { In } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { cachedMaterials, cachedMethods } from '../methods/cached-library.js';
import type { MaterialEntity } from '../methods/material.entity.js';
import type { MethodEntity } from '../methods/method.entity.js';
import { PersonEntity } from '../people/person.entity.js';
import { TeamEntity } from '../people/team.entity.js';
import { BookingEntity } from '../plan/plan.entity.js';
import { findByIds } from '../platform/find-by-ids.js';
import { byId } from '../platform/grouped.js';
import { ItemEntity } from '../register/item.entity.js';
import type { RequestEntity } from './request.entity.js';
import { RequestRepository } from './request.repository.js';
import type { WholeBatch } from './request.repository.js';

/** A job with its place in the plan, as far as there is one. */
export interface JobAround {
  job: JobEntity;
  booking: BookingEntity | null;
  frameTag: string | null;
}

/** A request with its batches, jobs and names. */
export interface RequestAround {
  request: RequestEntity;
  batches: { batch: WholeBatch; method: MethodEntity; material: MaterialEntity | null }[];
  jobs: JobAround[];
  team: TeamRef;
  requester: PersonRef;
}

/**
 * Reads what stands around these requests, in a fixed number of queries however many there are; one after the other,
 * because the caller's transaction has one connection.
 */
export async function readRequestsAround(
  manager: EntityManager,
  requests: readonly RequestEntity[],
): Promise<RequestAround[]> {
  const ids = requests.map(({ id }) => id);
  const batches = await new RequestRepository(manager).batchesOf(ids);
  const jobs = await jobsOf(manager, ids);
  const methods = await cachedMethods(
    manager,
    batches.map(({ methodId }) => methodId),
  );
  const materials = await cachedMaterials(
    manager,
    batches.map(({ materialId }) => materialId),
  );
  const teams = byId(
    await findByIds(
      manager,
      TeamEntity,
      requests.map(({ teamId }) => teamId),
    ),
  );
  const people = byId(
    await findByIds(
      manager,
      PersonEntity,
      requests.map(({ requesterId }) => requesterId),
    ),
  );
  return requests.map((request) => ({
    request,
    batches: batches
      .filter(({ requestId }) => requestId === request.id)
      .map((batch) => ({
        batch,
        method: methods.get(batch.methodId)!,
        material: batch.materialId === null ? null : (materials.get(batch.materialId) ?? null),
      })),
    jobs: jobs.filter(({ job }) => job.requestId === request.id),
    team: { id: request.teamId, name: teams.get(request.teamId)?.name ?? '' },
    requester: { id: request.requesterId, name: people.get(request.requesterId)?.name ?? '' },
  }));
}

async function jobsOf(manager: EntityManager, requestIds: readonly string[]): Promise<JobAround[]> {
  const jobs = await manager.find(JobEntity, { where: { requestId: In(requestIds) }, order: { reference: 'ASC' } });
  const bookings = await manager.findBy(BookingEntity, { jobId: In(jobs.map(({ id }) => id)), live: true });
  const frames = byId(
    await findByIds(
      manager,
      ItemEntity,
      [...jobs, ...bookings].map(({ frameId }) => frameId),
    ),
  );
  return jobs.map((job) => {
    const booking = bookings.find(({ jobId }) => jobId === job.id) ?? null;
    const frameId = job.frameId ?? booking?.frameId ?? null;
    return { job, booking, frameTag: frameId === null ? null : (frames.get(frameId)?.tag ?? null) };
  });
}

/** Names of people by id. */
export async function peopleNamed(manager: EntityManager, ids: readonly string[]): Promise<Map<string, PersonRef>> {
  const people = byId(await findByIds(manager, PersonEntity, ids));
  return new Map([...people].map(([id, { name }]) => [id, { id, name }]));
}
