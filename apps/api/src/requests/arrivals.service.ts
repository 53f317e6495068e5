import type { ArrivalBody } from '#libs/contract/src/index.js';
import { fieldProblem, LabError, refuseIfAny } from '#libs/errors/src/index.js';
import { readRequestsAround, LabRecords, RequestJobRepository, RequestRepository } from '#libs/records/src/index.js';
import type { RequestEntity, SpecimenEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import { releaseOf } from './release.js';

/** Not before it is accepted: until then its specimens may still change. */
const MAY_ARRIVE = ['accepted', 'in-work'];

/** Specimens come in, and the jobs that waited for them become ready. */
@Injectable()
export class ArrivalsService {
  constructor(private readonly records: LabRecords) {}

  /** A specimen that came in before keeps its first arrival. @throws LabError `request/not-open-for-specimens` */
  async receive(requestId: string, body: ArrivalBody, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record, now, nothing }) => {
      const requests = new RequestRepository(manager);
      const request = await requests.get(requestId);
      refuseClosed(request);
      const at = now();
      const mine = await requests.lockSpecimens(requestId);
      refuseIfAny(arrivalProblems(body, mine, at.getTime()));
      const fresh = mine.filter(({ id, fate }) => body.specimenIds.includes(id) && fate === 'expected');
      if (fresh.length === 0) return nothing(undefined);
      await requests.receive(
        fresh.map(({ id }) => id),
        rowOf(body, at),
      );
      await this.release(manager, request);
      await record({
        kind: 'request/specimens-arrived',
        subjectId: requestId,

        after: { labels: fresh.map(({ label }) => label), arrivedAt: body.arrivedAt, condition: body.condition },
      });
    });
  }

  private async release(manager: EntityManager, request: RequestEntity): Promise<void> {
    const { batches, jobs } = (await readRequestsAround(manager, [request]))[0]!;
    const repository = new RequestJobRepository(manager);
    for (const { batch, method } of batches) {
      const releasedAt = releaseOf(batch.specimens, method);
      const own = jobs.find(({ job }) => job.batchId === batch.id);
      if (releasedAt && own) await repository.release(own.job.id, releasedAt);
    }
  }
}

function rowOf({ arrivedAt, conditioningFrom, condition = '' }: ArrivalBody, now: Date): Partial<SpecimenEntity> {
  const at = arrivedAt ? new Date(arrivedAt) : now;
  return {
    fate: 'arrived',
    arrivedAt: at,
    conditioningFrom: conditioningFrom ? new Date(conditioningFrom) : at,
    condition,
  };
}

function arrivalProblems(body: ArrivalBody, mine: readonly SpecimenEntity[], nowMs: number) {
  const strangers = body.specimenIds.filter((id) => !mine.some((specimen) => specimen.id === id));
  const arrivedMs = body.arrivedAt ? Date.parse(body.arrivedAt) : nowMs;
  const conditionedMs = body.conditioningFrom ? Date.parse(body.conditioningFrom) : arrivedMs;
  return [
    ...strangers.map((id) =>
      fieldProblem({ field: 'specimenIds', found: id, allowed: 'specimens of this request', unit: '' }),
    ),
    arrivedMs > nowMs + CLOCK_SLACK_MS
      ? fieldProblem({ field: 'arrivedAt', found: body.arrivedAt, allowed: 'an instant that is over', unit: '' })
      : null,
    conditionedMs < arrivedMs
      ? fieldProblem({
          field: 'conditioningFrom',
          found: body.conditioningFrom,
          allowed: 'not before the arrival',
          unit: '',
        })
      : null,
  ];
}

/** Tablets do not all keep the same time. */
const CLOCK_SLACK_MS = 5 * 60_000;

function refuseClosed({ state, reference }: RequestEntity): void {
  if (MAY_ARRIVE.includes(state)) return;
  const sentence = `${reference} is ${state}; specimens are received while it is ${MAY_ARRIVE.join(', ')}.`;
  throw new LabError('request/not-open-for-specimens', sentence, { state });
}
