import type { JobState } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import { JobEntity } from '../jobs/job.entity.js';
import { entityOf } from '../platform/entity-of.js';
import { prepared, wordsSql } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import { ItemWindowEntity } from '../register/item-window.entity.js';
import { ItemEntity } from '../register/item.entity.js';

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
  /** What is wrong with each item that has an open fault. */
  faults: Map<string, string>;
}

interface Row {
  frames: JsonRow[];
  tags: Record<string, string> | null;
  windows: JsonRow[];
  faults: Record<string, string> | null;
  jobs: { job: JsonRow; reference: string; title: string; label: string; dueAt: string | null; weight: number }[];
}

type JsonRow = Record<string, unknown>;

const OPEN: readonly JobState[] = ['waiting', 'ready', 'taken', 'rigged', 'running', 'paused', 'blocked'];

/** Reads what surrounds the open jobs and those named, in one statement. */
export async function readPlanAround(
  manager: EntityManager,
  jobIds: readonly string[],
  now: Date,
): Promise<PlanAround> {
  const [row] = await prepared<Row>(manager, AROUND, [jobIds, now]);
  const { frames, tags, windows, faults, jobs } = row!;
  const named = jobs.map(({ job: json, reference, title, label, dueAt, weight }): [string, NamedJob] => {
    const job = entityOf(manager, JobEntity, json);
    return [
      job.id,
      {
        ...{ job, weight, requestReference: reference },
        title: label ? `${title}: ${label}` : title,
        dueAt: dueAt === null ? null : new Date(dueAt),
      },
    ];
  });
  return {
    frames: frames.map((json) => entityOf(manager, ItemEntity, json)),
    jobs: new Map(named),
    tags: new Map(Object.entries(tags ?? {})),
    windows: windows.map((json) => entityOf(manager, ItemWindowEntity, json)),
    faults: new Map(Object.entries(faults ?? {})),
  };
}

const AROUND: Prepared = {
  name: 'plan-around',
  text: `
    select
      (select coalesce(jsonb_agg(to_jsonb(item) order by tag), '[]') from item where kind = 'frame') as frames,
      (select jsonb_object_agg(id, tag) from item) as tags,
      (select coalesce(jsonb_agg(to_jsonb(item_window)), '[]') from item_window where ends_at > $2) as windows,
      (select jsonb_object_agg(item_id, what) from (select item_id, string_agg(what, '; ' order by opened_at) as what from fault
        where closed_at is null group by item_id) open) as faults,
      (select coalesce(jsonb_agg(jsonb_build_object('job', to_jsonb(job), 'reference', request.reference, 'title', request.title,
          'label', batch.label, 'dueAt', request.due_at, 'weight', request.weight)), '[]')
        from (select id from job where state = any(${wordsSql(OPEN)}) union select unnest($1::uuid[])) wanted
          join job on job.id = wanted.id join request on request.id = job.request_id join batch on batch.id = job.batch_id) as jobs`,
};
