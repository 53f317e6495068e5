import type { EntityManager } from 'typeorm';

/** One job's figures of one key. */
export interface HistoryRow {
  at: Date;
  requestReference: string;
  jobReference: string;
  batchLabel: string;
  material: string | null;
  cellTag: string | null;
  testType: string;
  /** Of tested specimens, the newest revision of each, in the kept unit. */
  values: number[];
}

export interface HistoryAsked {
  methodCode: string;
  materialCode: string | null;
  key: string;
  cellTag: string | null;
  limit: number;
}

/** Figures across requests: same method, same material, same key. */
export class HistoryRepository {
  constructor(private readonly manager: EntityManager) {}

  /** The newest jobs that are done, oldest first. */
  async find({ methodCode, materialCode, key, cellTag, limit }: HistoryAsked): Promise<HistoryRow[]> {
    const rows = await this.manager.query<HistoryRow[]>(
      `with chosen as (
         select job.id, job.batch_id, job.reference, job.finished_at, request.reference as request_reference, batch.label,
           material.name as material, fitted.tag, method.data ->> 'testType' as test_type
         from job
         join batch on batch.id = job.batch_id
         join request on request.id = job.request_id
         join method on method.id = batch.method_id
         left join material on material.id = batch.material_id
         left join lateral (
           select cell.tag from jsonb_array_elements(job.train) link join item cell on cell.id = (link ->> 'itemId')::uuid
           where link ->> 'role' = 'load-cell' limit 1) fitted on true
         where job.state = 'done' and batch.method_id = any (array(select id from method where code = $1))
           and ($2::text is null or material.code = $2) and ($4::text is null or fitted.tag = $4)
           and exists (select 1 from specimen join result on result.specimen_id = specimen.id and result.key = $3
             where specimen.batch_id = batch.id and specimen.fate = 'tested')
         order by job.finished_at desc limit $5
       )
       select chosen.finished_at as at, request_reference as "requestReference", chosen.reference as "jobReference",
         label as "batchLabel", material, tag as "cellTag", test_type as "testType", found.values
       from chosen, lateral (
         select array_agg(newest.value order by specimen.position) as values from specimen, lateral (
           select value from result where specimen_id = specimen.id and key = $3 order by revision desc limit 1) newest
         where specimen.batch_id = chosen.batch_id and specimen.fate = 'tested') found
       order by chosen.finished_at desc`,
      [methodCode, materialCode, key, cellTag, limit],
    );
    return rows.reverse();
  }
}
