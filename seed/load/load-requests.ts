import type { Method } from '#libs/matching/src/index.js';
import {
  append,
  BatchEntity,
  CurveEntity,
  DurationEntity,
  insertRows,
  JobEntity,
  NumberingEntity,
  RequestEntity,
  RequestMessageEntity,
  ResultEntity,
  ShiftCheckEntity,
  SpecimenEntity,
  StoredFileEntity,
  upsertRows,
} from '#libs/records/src/index.js';
import type { EntityManager } from 'typeorm';
import { ALL_REQUESTS, NEXT_REQUEST } from '../northmoor/all-requests.js';
import type { LabTime } from '../northmoor/lab-time.js';
import type { PastEvent, RequestRows } from './demo-rows.js';
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
  await insertRows(
    manager,
    RequestEntity,
    rows.map(({ request }) => request),
  );
  await insertRows(manager, BatchEntity, all('batches'));
  await insertRows(manager, SpecimenEntity, all('specimens'));
  await insertRows(manager, RequestMessageEntity, all('messages'));
  await insertRows(manager, JobEntity, all('jobs'));
  await insertRows(manager, ResultEntity, all('results'));
  await insertRows(manager, DurationEntity, all('durations'));
  await insertRows(manager, ShiftCheckEntity, all('checks'));
  await insertRows(manager, StoredFileEntity, all('files'));
  await insertRows(manager, CurveEntity, all('curves'));
  await upsertRows(manager, NumberingEntity, [{ name: 'request', next: NEXT_REQUEST }], ['name']);
  return rows;
}

/** Writes what happened into the record, oldest first. */
export async function writeEvents(manager: EntityManager, events: readonly PastEvent[]): Promise<void> {
  for (const event of [...events].sort((a, b) => a.at.getTime() - b.at.getTime())) await append(manager, event);
}
