import type { Method } from '#libs/matching/src/index.js';
import {
  append,
  BatchEntity,
  CurveEntity,
  DurationEntity,
  JobEntity,
  NumberingEntity,
  RequestEntity,
  RequestMessageEntity,
  ResultEntity,
  ShiftCheckEntity,
  SpecimenEntity,
  StoredFileEntity,
} from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { ALL_REQUESTS, NEXT_REQUEST } from '../northmoor/all-requests.js';
import type { LabTime } from '../northmoor/lab-time.js';
import type { PastEvent, RequestRows } from './demo-rows.js';
import { insertAll } from './insert.js';
import { requestRows } from './request-rows.js';

/** All requests with jobs and results. @returns what was written, with the events that the record is to say of them */
export async function loadRequests(
  manager: EntityManager,
  time: LabTime,
  methods: readonly Method[],
): Promise<RequestRows[]> {
  const byCode = new Map(methods.map((method) => [method.id, method]));
  const rows = ALL_REQUESTS.map((request) => requestRows(request, byCode, time));
  const all = <Table extends Exclude<keyof RequestRows, 'request'>>(table: Table) =>
    rows.flatMap((each) => each[table] as RequestRows[Table][number][]);
  await insertAll(
    manager,
    RequestEntity,
    rows.map(({ request }) => request),
  );
  await insertAll(manager, BatchEntity, all('batches'));
  await insertAll(manager, SpecimenEntity, all('specimens'));
  await insertAll(manager, RequestMessageEntity, all('messages'));
  await insertAll(manager, JobEntity, all('jobs'));
  await insertAll(manager, ResultEntity, all('results'));
  await insertAll(manager, DurationEntity, all('durations'));
  await insertAll(manager, ShiftCheckEntity, all('checks'));
  await insertAll(manager, StoredFileEntity, all('files'));
  await insertAll(manager, CurveEntity, all('curves'));
  await manager.upsert(NumberingEntity, { name: 'request', next: NEXT_REQUEST }, ['name']);
  return rows;
}

/** Writes what happened into the record, oldest first. */
export async function writeEvents(manager: EntityManager, events: readonly PastEvent[]): Promise<void> {
  for (const event of [...events].sort((a, b) => a.at.getTime() - b.at.getTime())) await append(manager, event);
}
