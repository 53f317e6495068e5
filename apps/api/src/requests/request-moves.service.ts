import { randomUUID } from 'node:crypto';
import { REQUEST_MOVES, waysOut } from '#libs/contract/src/index.js';
import type { RequestMove, ReviewBody } from '#libs/contract/src/index.js';
import { LabError, refuseIfAny } from '#libs/errors/src/index.js';
import {
  readRequestsAround,
  LabRecords,
  labSettings,
  RequestJobRepository,
  RequestRepository,
} from '#libs/records/src/index.js';
import type { Act, Happening, JobEntity, RequestAround, RequestEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import { LabMatchingService } from './lab-matching.service.js';
import { jobReference } from './release.js';
import { reviewProblems } from './review.js';
import { mayMove } from './requests.service.js';
import { teamsSeen } from './team-access.js';
import { submissionProblems } from './submission.js';
import { specimensOf } from './specimens.js';

/** One attempt to move a request, within its transaction. */
interface Attempt extends Act {
  around: RequestAround;
  requests: RequestRepository;
}

interface Change {
  set?: Partial<RequestEntity>;
  /** For the record; the state before and after come with it. */
  event: Happening;
}

/** The moves of a request's lifecycle. Each is one act. */
@Injectable()
export class RequestMovesService {
  constructor(
    private readonly records: LabRecords,
    private readonly matching: LabMatchingService,
  ) {}

  /** Hands a draft to the lab: everything that is asked must be there and possible, and each specimen gets its label. */
  submit(id: string, by: SignedIn): Promise<void> {
    return this.move('submit', id, by, async ({ around, requests, now }) => {
      const submittedAt = now();
      refuseIfAny(submissionProblems(around, submittedAt.getTime()));
      await requests.dropSpecimens(around.batches.map(({ batch }) => batch.id));
      const specimens = around.batches.flatMap(({ batch }) => specimensOf(around.request.reference, batch));
      await requests.addSpecimens(specimens);
      const labels = specimens.map(({ label }) => label);
      return { set: { submittedAt }, event: { kind: 'request/submitted', after: { specimens: labels } } };
    });
  }

  /**
   * The review by ISO/IEC 17025:2017 7.1 is settled, and each batch has a load train that can run it now: jobs are made.
   * Matching looks before the transaction, so that nothing waits for it; what it looked at is guarded by its version.
   */
  async accept(id: string, review: ReviewBody, by: SignedIn): Promise<void> {
    const { manager: outside } = this.records;
    const seen = await new RequestRepository(outside).get(id, teamsSeen(by));
    refuseMove('accept', seen, by);
    refuseIfAny(reviewProblems(review, seen.conformity !== null));
    const { batches } = (await readRequestsAround(outside, [seen]))[0]!;
    const capability = await this.matching.capabilityOf(batches, await labSettings(outside));
    const acceptedAt = this.records.clock.now();
    const settled = { ...review, byId: by.id, at: acceptedAt.toISOString() };
    const change = async ({ manager, around }: Attempt): Promise<Change> => {
      const jobs = around.batches.map((each) => jobOf(around.request, each));
      await new RequestJobRepository(manager).add(jobs);
      const after = { review: { ...review }, capability, jobs: jobs.map(({ reference }) => reference) };
      return { set: { acceptedAt, review: settled }, event: { kind: 'request/accepted', after } };
    };
    return this.move('accept', id, by, change, seen);
  }

  /** Sends it back with a question. */
  return(id: string, why: string, by: SignedIn): Promise<void> {
    return this.move('return', id, by, (attempt) => this.reason(attempt, 'request/returned', why));
  }

  decline(id: string, why: string, by: SignedIn): Promise<void> {
    return this.move('decline', id, by, (attempt) => this.reason(attempt, 'request/declined', why));
  }

  /** Takes it back; its jobs are aborted. */
  withdraw(id: string, why: string, by: SignedIn): Promise<void> {
    return this.move('withdraw', id, by, async ({ manager }) => {
      const aborted = await new RequestJobRepository(manager).abortOpen(id, why || 'The request was withdrawn');
      return { event: { kind: 'request/withdrawn', why, after: { aborted }, changesFacts: aborted.length > 0 } };
    });
  }

  reopen(id: string, why: string, by: SignedIn): Promise<void> {
    return this.move('reopen', id, by, () => Promise.resolve({ event: { kind: 'request/in-work', why } }));
  }

  close(id: string, by: SignedIn): Promise<void> {
    return this.move('close', id, by, () => Promise.resolve({ event: { kind: 'request/closed' } }));
  }

  private async reason(
    { around, requests, byId, now }: Attempt,
    kind: 'request/returned' | 'request/declined',
    why: string,
  ): Promise<Change> {
    const message = { id: randomUUID(), requestId: around.request.id, authorId: byId!, body: why, at: now() };
    await requests.addMessage(message);
    return { event: { kind, why } };
  }

  /** @param seen what the move rests on, when that was read before the transaction */
  private move(
    move: RequestMove,
    id: string,
    by: SignedIn,
    change: (attempt: Attempt) => Promise<Change>,
    seen?: RequestEntity,
  ): Promise<void> {
    return this.records.act(by.id, async (act) => {
      const { manager, record } = act;
      const requests = new RequestRepository(manager);
      const request = await requests.get(id, teamsSeen(by));
      refuseMove(move, request, by);
      const around = (await readRequestsAround(manager, [request]))[0]!;
      const { set = {}, event } = await change({ ...act, around, requests });
      const { to } = REQUEST_MOVES[move];
      await requests.change(seen ?? request, { ...set, state: to });
      await record({
        ...event,
        subjectId: id,
        before: { state: request.state },
        after: { state: to, ...event.after },
      });
    });
  }
}

/** The job of a batch, which waits for its specimens. */
function jobOf(
  request: RequestEntity,
  { batch }: RequestAround['batches'][number],
): Partial<JobEntity> & { reference: string } {
  return {
    ...{ id: randomUUID(), batchId: batch.id, requestId: request.id },
    reference: jobReference(request.reference, batch.position),
    ...{ state: 'waiting' as const, why: 'Specimens are not here' },
  };
}

/** @throws LabError `request/forbidden` for someone whose move it is not, `request/move-not-allowed` with the ways out */
function refuseMove(move: RequestMove, request: RequestEntity, by: SignedIn): void {
  const { id, reference, state } = request;
  if (!mayMove(move, request, by)) {
    throw new LabError('request/forbidden', `To ${move} ${reference} is for the ${REQUEST_MOVES[move].by}.`, {
      requestId: id,
    });
  }
  if (!REQUEST_MOVES[move].from.includes(state)) {
    const out = waysOut(REQUEST_MOVES, state);
    const ways = out.length > 0 ? `From there one can ${out.join(', ')}` : 'Nothing leads out of that state';
    throw new LabError('request/move-not-allowed', `${reference} is ${state}; one cannot ${move} it. ${ways}.`, {
      ...{ state, move, waysOut: out },
    });
  }
}
