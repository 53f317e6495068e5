import { REQUEST_MOVES, waysOut } from '#libs/contract/src/index.js';
import type { BatchView, RequestLine, RequestMove, RequestView, SpecimenView } from '#libs/contract/src/index.js';
import type { BatchInWhole, JobInWhole, RequestInList, RequestWhole } from '#libs/records/src/index.js';
import { waitsFor } from './waits-for.js';

/** What the views need to know beside the rows. */
export interface Telling {
  nowMs: number;
  timeZone: string;
}

/** A request as one line of a list. */
export function requestLine(around: RequestInList, { nowMs, timeZone }: Telling): RequestLine {
  const { request, batches, team, requester } = around;
  const open = ['accepted', 'in-work', 'in-review'].includes(request.state);
  const expected = Math.max(nowMs, ...around.jobs.map(({ booking }) => booking?.endsAt.getTime() ?? 0));
  return {
    id: request.id,
    reference: request.reference,
    title: request.title,
    state: request.state,
    team,
    requester,
    methods: [...new Set(batches.map(({ designation }) => designation))],
    specimens: batches.reduce((sum, { specimenCount }) => sum + specimenCount, 0),
    specimensMissing: around.missing,
    dueAt: instant(request.dueAt),
    waitsFor: waitsFor(around, nowMs, timeZone),
    promise50At: instant(request.promise50At),
    promise80At: instant(request.promise80At),
    late: open && request.dueAt !== null && expected > request.dueAt.getTime(),
  };
}

/**
 * A request whole.
 *
 * @param may the moves that this person may make, out of those that the state allows
 */
export function requestView(whole: RequestWhole, may: (move: RequestMove) => boolean, nowMs: number): RequestView {
  const { request, timeZone } = whole;
  return {
    ...requestLine(inList(whole), { nowMs, timeZone }),
    importedAs: request.importedAs,
    purpose: request.purpose,
    specimensAt: instant(request.specimensAt),
    weight: request.weight,
    disposal: request.disposal,
    conformity: request.conformity,
    review: reviewOf(whole),
    promiseNote: request.promiseNote,
    batches: whole.batches.map((each) => batchView(each, whole.jobs)),
    messages: whole.messages.map(({ at, ...rest }) => ({ ...rest, at: at.toISOString() })),
    moves: waysOut(REQUEST_MOVES, request.state).filter((move) => REQUEST_MOVES[move].by !== 'system' && may(move)),
    reports: whole.reports,
    createdAt: request.createdAt.toISOString(),
    submittedAt: instant(request.submittedAt),
    acceptedAt: instant(request.acceptedAt),
    version: request.version,
  };
}

function inList({ batches, ...whole }: RequestWhole): RequestInList {
  const specimens = batches.flatMap((batch) => batch.specimens);
  return {
    ...whole,
    batches: batches.map(({ batch, method }) => ({
      designation: method.designation,
      specimenCount: batch.specimenCount,
    })),
    missing: specimens.filter(({ fate, arrivedAt }) => fate === 'expected' && arrivedAt === null).length,
  };
}

function reviewOf({ request, reviewer }: RequestWhole): RequestView['review'] {
  if (request.review === null || reviewer === null) return null;
  const { byId: _, at, ...points } = request.review;
  return { ...points, by: reviewer, at };
}

function batchView({ batch, method, material, specimens }: BatchInWhole, jobs: readonly JobInWhole[]): BatchView {
  const own = jobs.find(({ job }) => job.batchId === batch.id);
  return {
    ...batch,
    method,
    material,
    specimens: specimens.map(specimenView),
    job: own ? jobOf(own) : null,
  };
}

function jobOf({ job, booking, frameTag }: JobInWhole): BatchView['job'] {
  return {
    id: job.id,
    reference: job.reference,
    state: job.state,
    why: job.why ?? job.holdWhy,
    frameTag,
    startsAt: instant(job.startedAt ?? booking?.startsAt ?? null),
    endsAt: instant(job.finishedAt ?? booking?.endsAt ?? null),
  };
}

function specimenView(row: BatchInWhole['specimens'][number]): SpecimenView {
  return {
    id: row.id,
    label: row.label,
    position: row.position,
    fate: row.fate,
    invalidWhy: row.invalidWhy,
    arrivedAt: instant(row.arrivedAt),
    condition: row.condition,
    conditioningFrom: instant(row.conditioningFrom),
    dimensions: row.dimensions,
    version: row.version,
  };
}

export function instant(at: Date | null): string | null {
  return at === null ? null : at.toISOString();
}
