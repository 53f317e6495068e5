import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import type { ItemKind, Method } from '#libs/matching/src/index.js';
import type { JobEntity, SpecimenEntity } from '#libs/records/src/index.js';
import { wasAccepted } from '../northmoor/all-requests.js';
import type { NumberedRequest } from '../northmoor/all-requests.js';
import { Chance } from '../northmoor/chance.js';
import { idOf } from '../northmoor/ids.js';
import { itemId, itemWithTag } from '../northmoor/items.js';
import type { LabTime } from '../northmoor/lab-time.js';
import type { DemoBatch } from '../northmoor/demo-request.js';
import { TRAINS } from '../northmoor/trains.js';
import type { RequestRows } from './demo-rows.js';
import { jobEvents } from './job-events.js';
import { jobTimes } from './job-times.js';
import { personId } from './load-people.js';
import { shiftCheckRow } from './shift-check-rows.js';
import { testedPiece } from './tested-piece.js';
import type { WorkOf } from './work-of.js';

export type BatchWork = Pick<
  RequestRows,
  'specimens' | 'jobs' | 'results' | 'durations' | 'checks' | 'files' | 'curves' | 'events'
>;

const NOTHING = { jobs: [], results: [], durations: [], checks: [], files: [], curves: [], events: [] };

/** Specimens of a batch, its job, what was measured and how long it took. */
export function batchWork(
  demo: NumberedRequest,
  batch: DemoBatch,
  position: number,
  method: Method,
  time: LabTime,
): BatchWork {
  const { reference } = demo;
  const pieces = demo.state === 'draft' ? [] : specimenRows(demo, batch, position, time);
  if (!wasAccepted(demo)) return { ...NOTHING, specimens: pieces };
  const jobReference = `${reference.replace('R-', 'J-')}-${position}`;
  if (!batch.job)
    return { ...NOTHING, specimens: pieces, jobs: [openJob(reference, position, jobReference, pieces, method)] };
  const times = jobTimes(batch.job, jobReference, batch.count, method, time);
  return begunWork({ demo, batch, reference: jobReference, method, times, job: batch.job }, position, pieces);
}

function specimenRows(
  demo: NumberedRequest,
  batch: DemoBatch,
  position: number,
  time: LabTime,
): Partial<SpecimenEntity>[] {
  const at = demo.specimens ? time.at(...demo.specimens) : null;
  const arrivedAt = at && at.getTime() <= time.nowMs ? at : null;
  const digits = Math.max(2, String(batch.count).length);
  return Array.from({ length: batch.count }, (_, index) => {
    const here = arrivedAt ?? (index < (batch.arrived ?? 0) ? time.past(-1, '15:10') : null);
    const label = `${demo.reference}-${position}-${String(index + 1).padStart(digits, '0')}`;
    return {
      id: idOf('specimen', label),
      batchId: idOf('batch', `${demo.reference}/${position}`),
      label,
      position: index + 1,
      fate: here ? ('arrived' as const) : ('expected' as const),
      invalidWhy: null,
      arrivedAt: here,
      condition: '',
      conditioningFrom: here,
      dimensions: {},
    };
  });
}

function openJob(
  request: string,
  position: number,
  reference: string,
  pieces: readonly Partial<SpecimenEntity>[],
  method: Method,
): Partial<JobEntity> {
  const releasedAt = releaseOf(pieces, method);
  return {
    ...jobShell(request, position, reference),
    state: releasedAt ? 'ready' : 'waiting',
    why: releasedAt ? null : 'Specimens are not here',
    releasedAt,
  };
}

/** All pieces here and the last one conditioned; null while one is missing. */
function releaseOf(pieces: readonly Partial<SpecimenEntity>[], { conditioning }: Method): Date | null {
  const since = pieces.map(({ conditioningFrom }) => conditioningFrom?.getTime() ?? null);
  const here = since.filter((at) => at !== null);
  if (here.length < since.length) return null;
  return new Date(Math.max(...here) + (conditioning?.hours ?? 0) * MS_PER_HOUR);
}

function jobShell(request: string, position: number, reference: string): Partial<JobEntity> {
  return {
    id: idOf('job', reference),
    reference,
    batchId: idOf('batch', `${request}/${position}`),
    requestId: idOf('request', request),
    why: null,
    frameId: null,
    technicianId: null,
    train: [],
    checks: {},
    holdWhy: null,
    pinFrameId: null,
    pinStartAt: null,
    takenAt: null,
    startedAt: null,
    finishedAt: null,
    conditions: {},
  };
}

function begunWork(work: WorkOf, position: number, pieces: readonly Partial<SpecimenEntity>[]): BatchWork {
  const { demo, job, reference, method, times, batch } = work;
  const tested = job.state === 'done' ? batch.count : (job.tested ?? 0);
  const outcomes = pieces.map((piece, index) =>
    index < tested ? testedPiece(work, piece, index + 1) : { specimen: piece, results: [], curves: [], files: [] },
  );
  const row = { ...jobShell(demo.reference, position, reference), ...jobColumns(work, releaseOf(pieces, method)) };
  return {
    specimens: outcomes.map(({ specimen }) => specimen),
    results: outcomes.flatMap(({ results }) => results),
    curves: outcomes.flatMap(({ curves }) => curves),
    files: outcomes.flatMap(({ files }) => files),
    jobs: [row],
    durations: times.finishedAt ? [durationRow(work)] : [],
    checks: times.startedAt || times.riggedAt ? [shiftCheckRow(work)] : [],
    events: jobEvents(work),
  };
}

function jobColumns(work: WorkOf, releasedAt: Date | null): Partial<JobEntity> {
  const { job, reference, times } = work;
  const { frame, links } = TRAINS[job.train];
  const confirmed = times.riggedAt && {
    confirmedAt: times.riggedAt.toISOString(),
    confirmedBy: personId(job.technician),
  };
  const climate = new Chance(`climate/${reference}`);
  return {
    state: job.state,
    why: job.why ?? null,
    releasedAt,
    frameId: itemId(frame),
    technicianId: personId(job.technician),
    train: links.map(({ role, tag }) => ({ role, itemId: itemId(tag), ...(confirmed ?? {}) })),
    checks: times.startedAt && times.riggedAt ? ticked(work, times.riggedAt) : {},
    takenAt: times.takenAt,
    startedAt: times.startedAt,
    finishedAt: times.finishedAt,
    conditions: times.finishedAt
      ? {
          temperatureC: Number(climate.between(22.4, 23.8).toFixed(1)),
          humidityPct: Math.round(climate.between(46, 54)),
          remarks: '',
          deviations: '',
        }
      : {},
  };
}

/** Checks that are ticked at any frame before the first specimen, and those that an item of the train brings with it. */
const TICKED = ['limit-stops', 'guard', 'emergency-stop', 'warm-up', 'channels', 'zero'];
const TICKED_FOR: Partial<Record<ItemKind, string>> = {
  grip: 'faces',
  fixture: 'fixture',
  platen: 'platens',
  extensometer: 'extensometer',
};

function ticked({ job }: WorkOf, riggedAt: Date): JobEntity['checks'] {
  const train = TRAINS[job.train].links.map(({ tag }) => itemWithTag(tag));
  const more = train.flatMap(({ kind }) => TICKED_FOR[kind] ?? []);
  const air = train.some(({ utilities }) => utilities.includes('compressed-air')) ? ['air-pressure'] : [];
  const tick = { at: riggedAt.toISOString(), by: personId(job.technician) };
  return Object.fromEntries([...TICKED, ...more, ...air].map((key) => [key, tick]));
}

function durationRow({ reference, method, batch, times }: WorkOf): RequestRows['durations'][number] {
  return {
    jobId: idOf('job', reference),
    methodCode: method.id,
    specimens: batch.count,
    setupMin: times.setupMin,
    workMin: Math.round(times.perSpecimenMin * batch.count * 10) / 10,
    at: times.finishedAt!,
  };
}
