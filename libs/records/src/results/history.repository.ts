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
      `with newest as (
         select distinct on (result.specimen_id) result.specimen_id, result.value from result
         where result.key = $3 order by result.specimen_id, result.revision desc
       )
       select job.finished_at as at, request.reference as "requestReference", job.reference as "jobReference", batch.label as "batchLabel",
         material.name as material, cell.tag as "cellTag", method.data ->> 'testType' as "testType",
         array_agg(newest.value order by specimen.position) as values
       from job
       join batch on batch.id = job.batch_id
       join request on request.id = job.request_id
       join method on method.id = batch.method_id and method.code = $1
       left join material on material.id = batch.material_id
       left join lateral (select link ->> 'itemId' as id from jsonb_array_elements(job.train) link where link ->> 'role' = 'load-cell' limit 1) fitted on true
       left join item cell on cell.id::text = fitted.id
       join specimen on specimen.batch_id = batch.id and specimen.fate = 'tested'
       join newest on newest.specimen_id = specimen.id
       where job.state = 'done' and ($2::text is null or material.code = $2) and ($4::text is null or cell.tag = $4)
       group by job.id, request.id, batch.id, method.id, material.id, cell.id
       order by job.finished_at desc limit $5`,
      [methodCode, materialCode, key, cellTag, limit],
    );
    return rows.reverse();
  }
}
