import type { DataSource } from 'typeorm';

/**
 * Adds requests of past years, each with a batch, a done job, two specimens and their results, made after those that the demo lab
 * has finished. Written as rows: their events are not in the record.
 */
export async function grow(records: DataSource, requests: number): Promise<void> {
  await records.transaction(async (manager) => {
    for (const statement of statements(requests)) await manager.query(statement);
  });
  await records.query('vacuum analyze');
}

const YEARS = 10;

function statements(requests: number): string[] {
  return [
    `create temporary table grown on commit drop as
     select nr, gen_random_uuid() as request_id, gen_random_uuid() as batch_id, gen_random_uuid() as job_id, like_job.id as like_job_id,
       like_job.batch_id as like_batch_id, like_job.request_id as like_request_id,
       now() - interval '40 days' - nr * interval '${YEARS} years' / ${requests} as at
     from generate_series(1, ${requests}) nr
     join (select id, batch_id, request_id, row_number() over (order by reference) as at, count(*) over () as of from job
       where state = 'done' and exists (select 1 from result where job_id = job.id)) like_job on like_job.at = nr % like_job.of + 1`,
    `insert into request (id, reference, title, purpose, state, team_id, requester_id, due_at, weight, disposal, created_at, submitted_at, accepted_at, version)
     select request_id, 'R-G' || nr, title || ' ' || nr, purpose, (array['closed', 'closed', 'closed', 'declined', 'withdrawn'])[nr % 5 + 1], team_id, requester_id,
       at + interval '14 days', 1, disposal, at, at, at + interval '1 day', 1 from grown join request on request.id = like_request_id`,
    `insert into batch (id, request_id, position, label, method_id, material_id, ask, as_typed, specimen_count, version)
     select grown.batch_id, grown.request_id, 1, label, method_id, material_id, ask, as_typed, 2, 1 from grown join batch on batch.id = like_batch_id`,
    `insert into job (id, reference, batch_id, request_id, state, released_at, frame_id, technician_id, train, checks, taken_at, started_at, finished_at, conditions, version)
     select grown.job_id, 'J-G' || nr, grown.batch_id, grown.request_id, 'done', at, frame_id, technician_id, train, checks, at + interval '7 days', at + interval '7 days',
       at + interval '8 days', conditions, 1 from grown join job on job.id = like_job_id`,
    `create temporary table grown_specimen on commit drop as
     select grown.*, gen_random_uuid() as specimen_id, position from grown, generate_series(1, 2) position`,
    `insert into specimen (id, batch_id, label, position, fate, arrived_at, version)
     select specimen_id, batch_id, 'S-G' || nr || '-' || position, position, 'tested', at, 1 from grown_specimen`,
    `insert into result (id, specimen_id, job_id, key, value, unit, origin, basis, entered_by, entered_at)
     select gen_random_uuid(), specimen_id, grown_specimen.job_id, key, value * (1 + (nr % 100) / 2000.0), unit, 'typed', '{}', entered_by, at + interval '8 days'
     from grown_specimen join lateral (select key, value, unit, entered_by from result where job_id = like_job_id and revision = 1 order by key limit 1) one on true`,
  ];
}
