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

/** Jobs of a method, the newest, that are looked at for a figure: one that few of them have must not cost a look at all of them. */
const MOST_LOOKED_AT = 2_000;

/** Figures across requests: same method, same material, same key. */
export class HistoryRepository {
  constructor(private readonly manager: EntityManager) {}

  /**
   * The newest jobs that are done, oldest first. Versions of the method are looked up before, so that the server knows how rare its
   * jobs are: those of a common one are found from the newest on, those of a rare one by their batches.
   */
  async find({ methodCode, materialCode, key, cellTag, limit }: HistoryAsked): Promise<HistoryRow[]> {
    const versions = await this.manager.query<{ id: string }[]>('select id from method where code = $1', [methodCode]);
    const methodIds = versions.map(({ id }) => id);
    const rows = await this.manager.query<HistoryRow[]>(
      `with chosen as (
         select job.id, job.batch_id, job.reference, job.finished_at, request.reference as request_reference, batch.label,
           material.name as material, fitted.tag, method.data ->> 'testType' as test_type
         from (
           select job.* from job join batch on batch.id = job.batch_id
           where job.state = 'done' and batch.method_id = any ($1::uuid[])
             and ($2::text is null or batch.material_id = (select id from material where code = $2))
           order by job.finished_at desc limit ${MOST_LOOKED_AT}
         ) job
         join batch on batch.id = job.batch_id
         join request on request.id = job.request_id
         join method on method.id = batch.method_id
         left join material on material.id = batch.material_id
         left join lateral (
           select cell.tag from jsonb_array_elements(job.train) link join item cell on cell.id = (link ->> 'itemId')::uuid
           where link ->> 'role' = 'load-cell' limit 1) fitted on true
         where ($4::text is null or fitted.tag = $4)
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
      [methodIds, materialCode, key, cellTag, limit],
    );
    return rows.reverse();
  }
}
