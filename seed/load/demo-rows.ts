import type {
  BatchEntity,
  CurveEntity,
  DurationEntity,
  JobEntity,
  RecordEntry,
  RequestEntity,
  RequestMessageEntity,
  ResultEntity,
  ShiftCheckEntity,
  SpecimenEntity,
  StoredFileEntity,
} from '#libs/records/src/index.js';

/** One event of the record with the time at which it happened. */
export type PastEvent = RecordEntry;

/** Rows of one request, table by table. */
export interface RequestRows {
  request: Partial<RequestEntity>;
  batches: Partial<BatchEntity>[];
  specimens: Partial<SpecimenEntity>[];
  messages: Partial<RequestMessageEntity>[];
  jobs: Partial<JobEntity>[];
  results: Partial<ResultEntity>[];
  durations: Partial<DurationEntity>[];
  checks: Partial<ShiftCheckEntity>[];
  files: Partial<StoredFileEntity>[];
  curves: Partial<CurveEntity>[];
  events: PastEvent[];
}
