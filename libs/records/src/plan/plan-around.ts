import { In, MoreThan } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { ItemWindowEntity } from '../register/item-window.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { BatchEntity } from '../requests/batch.entity.js';
import { RequestEntity } from '../requests/request.entity.js';

/** A job with the names that people know it by. */
export interface NamedJob {
  job: JobEntity;
  requestReference: string;
  title: string;
  dueAt: Date | null;
  weight: number;
}

/** What a plan has to be shown with: its frames, the names of its jobs and items, and when items are away. */
export interface PlanAround {
  frames: ItemEntity[];
  jobs: Map<string, NamedJob>;
  tags: Map<string, string>;
  windows: ItemWindowEntity[];
}

/** Reads what surrounds the open jobs and those named, in a handful of queries however many there are. */
export async function planAround(manager: EntityManager, jobIds: readonly string[], now: Date): Promise<PlanAround> {
  const open = await manager.findBy(JobEntity, {
    state: In(['waiting', 'ready', 'taken', 'rigged', 'running', 'paused', 'blocked']),
  });
  const missing = jobIds.filter((id) => !open.some((job) => job.id === id));
  const others = missing.length === 0 ? [] : await manager.findBy(JobEntity, { id: In(missing) });
  const items = await manager.find(ItemEntity, { order: { tag: 'ASC' } });
  return {
    frames: items.filter(({ kind }) => kind === 'frame'),
    tags: new Map(items.map(({ id, tag }) => [id, tag])),
    jobs: await namedJobs(manager, [...open, ...others]),
    windows: await manager.findBy(ItemWindowEntity, { endsAt: MoreThan(now) }),
  };
}

async function namedJobs(manager: EntityManager, jobs: readonly JobEntity[]): Promise<Map<string, NamedJob>> {
  if (jobs.length === 0) return new Map();
  const requests = await manager.findBy(RequestEntity, { id: In(jobs.map(({ requestId }) => requestId)) });
  const batches = await manager.findBy(BatchEntity, { id: In(jobs.map(({ batchId }) => batchId)) });
  return new Map(
    jobs.map((job) => {
      const request = requests.find(({ id }) => id === job.requestId)!;
      const label = batches.find(({ id }) => id === job.batchId)?.label ?? '';
      const title = label ? `${request.title}: ${label}` : request.title;
      return [
        job.id,
        { job, title, requestReference: request.reference, dueAt: request.dueAt, weight: request.weight },
      ];
    }),
  );
}
