import { randomUUID } from 'node:crypto';
import { instantOfMinute } from '#libs/calendar/src/index.js';
import type { LandingView } from '#libs/contract/src/index.js';
import { askOf, LabRecords, materialOf, methodOf, MethodRepository, readPlanFacts } from '#libs/records/src/index.js';
import type { OpenJob, PlanFacts } from '#libs/records/src/index.js';
import type { TaskPayload } from '#libs/tasks/src/index.js';
import { Injectable } from '@nestjs/common';
import type { TaskProcessor } from '../platform/task-processor.js';
import { matchJob } from './match-job.js';
import { outcomeOf } from './outcome-of.js';
import { planInThread } from './plan-in-thread.js';
import { problemOf } from './problem-of.js';
import { Words } from './words.js';

/** Somebody is typing and needs the answer within a second. */
const THINKING_MS = 250;

/** Where a request would land if it came now. Nothing is kept but the answer. */
@Injectable()
export class WhereWouldItLandProcessor implements TaskProcessor<'where-would-it-land'> {
  readonly handles = 'where-would-it-land';

  constructor(private readonly records: LabRecords) {}

  async run({ batches, dueAt, specimensAt }: TaskPayload<'where-would-it-land'>): Promise<Record<string, unknown>> {
    const started = performance.now();
    const facts = await readPlanFacts(this.records.source, this.records.clock.nowMs());
    const asked = await Promise.all(batches.map((batch) => this.jobOf(batch, dueAt, specimensAt)));
    const withThem: PlanFacts = { ...facts, jobs: [...facts.jobs, ...asked] };
    const task = problemOf(withThem, matchJob);
    const plan = await planInThread(task.problem, THINKING_MS, 1, { insert: asked.map(({ id }) => id) });
    const { bookings, promises, notes } = outcomeOf(withThem, task, plan);
    const words = new Words(withThem, task.originMs);
    const own = promises.filter(({ jobId }) => asked.some(({ id }) => id === jobId));
    const finish = (minutes: readonly number[]) =>
      own.length < asked.length
        ? null
        : new Date(instantOfMinute(task.originMs, Math.round(Math.max(...minutes)))).toISOString();
    const view: LandingView = {
      batches: asked.map(({ id }) => {
        const booking = bookings.find(({ jobId }) => jobId === id);
        if (!booking) {
          const reasons = notes.unplaced.find(({ jobId }) => jobId === id)?.reasons ?? [];
          return { frameTag: null, startsAt: null, endsAt: null, sentence: `It finds no place: ${reasons.join(' ')}` };
        }
        const frameTag = words.tag(booking.frameId!);
        const [startsAt, endsAt] = [booking.startsAt.toISOString(), booking.endsAt.toISOString()];
        return {
          frameTag,
          startsAt,
          endsAt,
          sentence: `On ${frameTag}, done ${words.at((booking.endsAt.getTime() - task.originMs) / 60_000)}`,
        };
      }),
      finish50At: finish(own.map(({ done50Min }) => done50Min)),
      finish80At: finish(own.map(({ done80Min }) => done80Min)),
      computedInMs: Math.round(performance.now() - started),
    };
    return { ...view };
  }

  private async jobOf(
    { methodId, materialId, ask, specimenCount }: TaskPayload<'where-would-it-land'>['batches'][number],
    dueAt: string | null,
    specimensAt: string | null,
  ): Promise<OpenJob> {
    const methods = new MethodRepository(this.records.manager);
    const method = await methods.get(methodId);
    const material = materialId === null ? null : await methods.getMaterial(materialId);
    return {
      ...{
        id: randomUUID(),
        reference: 'this request',
        requestId: '',
        requestReference: '',
        title: '',
        state: 'waiting' as const,
      },
      ask: askOf({ ask, specimenCount }, method, material),
      method: methodOf(method),
      material: material && materialOf(material),
      ...{
        weight: 1,
        dueMs: dueAt === null ? null : Date.parse(dueAt),
        releasedMs: null,
        specimensLeft: specimenCount,
      },
      ...{ expectedMs: specimensAt === null ? null : Date.parse(specimensAt), hold: false, pin: null, on: null },
    };
  }
}
