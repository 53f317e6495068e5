import type { RequestState } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import type { BatchEntity, RequestMessageEntity, SettledReview } from '#libs/records/src/index.js';
import { wasAccepted } from '../northmoor/all-requests.js';
import type { NumberedRequest } from '../northmoor/all-requests.js';
import { idOf } from '../northmoor/ids.js';
import type { LabTime } from '../northmoor/lab-time.js';
import type { DemoBatch } from '../northmoor/demo-request.js';
import type { PastEvent, RequestRows } from './demo-rows.js';
import { batchWork } from './batch-work.js';
import { materialId, methodId } from './load-library.js';
import { personId, teamId } from './load-people.js';

const MANAGER = 'ruth.calloway';
const SUBMITTED_AFTER_MIN = 18;
const SETTLED = { methodAgreed: true, capabilityShown: true, specimensAgreed: true, disposalAgreed: true };

/** The rows of one request of the demo, with all that hangs on it. */
export function requestRows(demo: NumberedRequest, methods: ReadonlyMap<string, Method>, time: LabTime): RequestRows {
  const id = idOf('request', demo.reference);
  const dates = datesOf(demo, time);
  const work = demo.batches.map((batch, index) => batchWork(demo, batch, index + 1, methods.get(batch.method)!, time));
  return {
    request: {
      id,
      reference: demo.reference,
      title: demo.title,
      purpose: demo.purpose,
      state: demo.state,
      teamId: teamId(demo.team),
      requesterId: personId(demo.requester),
      dueAt: demo.due ? time.at(...demo.due) : null,
      weight: demo.weight ?? 1,
      disposal: demo.disposal ?? 'keep-90-days',
      conformity: demo.conformity ? { ...demo.conformity } : null,
      review: dates.acceptedAt ? review(demo, dates.acceptedAt) : null,
      specimensAt: demo.specimens ? time.at(...demo.specimens) : null,
      ...dates,
    },
    batches: demo.batches.map((batch, index) => batchRow(id, demo.reference, batch, index + 1, methods)),
    specimens: work.flatMap(({ specimens }) => specimens),
    messages: (demo.messages ?? []).map((message, index) => messageRow(id, demo.reference, message, index, time)),
    jobs: work.flatMap(({ jobs }) => jobs),
    results: work.flatMap(({ results }) => results),
    durations: work.flatMap(({ durations }) => durations),
    checks: work.flatMap(({ checks }) => checks),
    files: work.flatMap(({ files }) => files),
    curves: work.flatMap(({ curves }) => curves),
    events: [...requestEvents(demo, id, dates, time), ...work.flatMap(({ events }) => events)],
  };
}

interface Dates {
  createdAt: Date;
  submittedAt: Date | null;
  acceptedAt: Date | null;
}

/** Submitted some minutes after it was begun, accepted in the morning of the next working day. */
function datesOf(demo: NumberedRequest, time: LabTime): Dates {
  const createdAt = time.past(...demo.created);
  const submittedAt = demo.state === 'draft' ? null : new Date(createdAt.getTime() + SUBMITTED_AFTER_MIN * 60_000);
  return { createdAt, submittedAt, acceptedAt: wasAccepted(demo) ? time.past(demo.created[0] + 1, '08:05') : null };
}

function review({ conformity }: NumberedRequest, acceptedAt: Date): SettledReview {
  return {
    ...SETTLED,
    ...(conformity ? { decisionRuleAgreed: true } : {}),
    byId: personId(MANAGER),
    at: acceptedAt.toISOString(),
  };
}

function batchRow(
  requestId: string,
  reference: string,
  { label = '', method, material, ask, count, asTyped = {} }: DemoBatch,
  position: number,
  methods: ReadonlyMap<string, Method>,
): Partial<BatchEntity> {
  return {
    id: idOf('batch', `${reference}/${position}`),
    requestId,
    position,
    label,
    methodId: methodId(methods.get(method)!),
    materialId: material ? materialId(material) : null,
    ask: { ...ask },
    asTyped,
    specimenCount: count,
  };
}

function messageRow(
  requestId: string,
  reference: string,
  { by, at, body }: NonNullable<NumberedRequest['messages']>[number],
  index: number,
  time: LabTime,
): Partial<RequestMessageEntity> {
  return {
    id: idOf('message', `${reference}/${index + 1}`),
    requestId,
    authorId: personId(by),
    body,
    at: time.past(...at),
  };
}

function requestEvents(demo: NumberedRequest, subjectId: string, dates: Dates, time: LabTime): PastEvent[] {
  const about = { subjectKind: 'request', subjectId };
  const { reference, title } = demo;
  const moved = (
    actorId: string,
    at: Date,
    from: string,
    to: Exclude<RequestState, 'draft'>,
    why: string | null = null,
  ): PastEvent => ({
    ...about,
    ...{ actorId, at, why, kind: `request/${to}`, before: { state: from }, after: { state: to } },
  });
  const asked = personId(demo.requester);
  const first = demo.messages?.[0];
  const at = demo.specimens ? time.at(...demo.specimens) : null;
  const arrivedAt = at && at.getTime() <= time.nowMs ? at : null;
  return [
    { ...about, actorId: asked, kind: 'request/drafted', at: dates.createdAt, after: { reference, title } },
    ...(dates.submittedAt ? [moved(asked, dates.submittedAt, 'draft', 'submitted')] : []),
    ...(dates.acceptedAt ? [moved(personId(MANAGER), dates.acceptedAt, 'submitted', 'accepted')] : []),
    ...(arrivedAt ? [arrived(subjectId, arrivedAt)] : []),
    ...(first && (demo.state === 'returned' || demo.state === 'declined' || demo.state === 'withdrawn')
      ? [moved(personId(first.by), time.past(...first.at), 'submitted', demo.state, first.body)]
      : []),
  ];
}

function arrived(subjectId: string, at: Date): PastEvent {
  const by = { actorId: personId('gareth.pell'), subjectKind: 'request', subjectId };
  return { ...by, kind: 'request/specimens-arrived', at, after: { arrivedAt: at.toISOString(), condition: '' } };
}
