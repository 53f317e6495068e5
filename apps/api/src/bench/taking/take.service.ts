import { nothingWhy } from '#libs/bench/src/index.js';
import type { BenchView, JobView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { JobRepository, LabRecords, readTodayAtBench } from '#libs/records/src/index.js';
import type { Act, JobToday } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import { CurrentLab } from '../../platform/current-lab.js';
import { JobViews } from '../job/job-views.js';
import { findNextJob } from './next-job.js';

/** What comes next, and who takes it: the first job of the plan that one may run and whose train is free. */
@Injectable()
export class TakeService {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
    private readonly views: JobViews,
  ) {}

  async bench(by: SignedIn): Promise<BenchView> {
    const { manager } = this.records;
    const nowMs = this.records.clock.nowMs();
    const today = await readTodayAtBench(manager, new Date(nowMs));
    const found = await findNextJob({ manager, lab: await this.current.get(by), technicianId: by.id, nowMs });
    const next = found.next && today.find(({ job }) => job.id === found.next!.job.id);
    return {
      mine: today.filter(({ job }) => job.technicianId === by.id && OPEN.includes(job.state)).map(mineView),
      next: next && next.booking ? nextView(next, next.booking) : null,
      nothingWhy: found.next ? null : nothingWhy(found.passedOver),
      today: today.flatMap((row) => (row.booking && row.isToday ? [todayView(row, row.booking)] : [])),
    };
  }

  /**
   * Takes the next job for exactly one technician, whatever the load: those who take wait for one another. Who has a job that
   * is not rigged yet gets that one again.
   *
   * @throws LabError `bench/nothing-to-take` with the reasons
   */
  async take(frameId: string | undefined, by: SignedIn): Promise<JobView> {
    const jobId = await this.records.act(by.id, async (act) => {
      const jobs = new JobRepository(act.manager);
      await jobs.waitToTake();
      const mine = (await jobs.ofTechnician(by.id)).find(({ state }) => state === 'taken');
      return mine ? act.nothing(mine.id) : this.takeNext(act, jobs, frameId, by);
    });
    return this.views.view(jobId, by);
  }

  private async takeNext(
    act: Act,
    jobs: JobRepository,
    frameId: string | undefined,
    { id: technicianId }: SignedIn,
  ): Promise<string> {
    const { manager } = act;
    const takenAt = act.now();
    const lab = await this.current.within(manager);
    const { next, passedOver } = await findNextJob({ manager, lab, technicianId, nowMs: takenAt.getTime(), frameId });
    if (!next) {
      throw new LabError('bench/nothing-to-take', nothingWhy(passedOver), { passedOver: passedOver.slice(0, NAMED) });
    }
    const { job, booking } = next;
    const train = booking.train.map(({ role, itemId }) => ({ role, itemId }));
    const fresh = { checks: {}, startedAt: null, why: null };
    await jobs.move(job, 'take', { ...fresh, frameId: booking.frameId, technicianId, train, takenAt });
    await act.record({
      ...{ kind: 'job/taken', subjectId: job.id, before: { state: job.state } },
      after: { state: 'taken', frameId: booking.frameId, train },
    });
    return job.id;
  }
}

/** Jobs that a refusal names for programs. */
const NAMED = 10;

const OPEN: readonly string[] = ['taken', 'rigged', 'running', 'paused'];

function mineView({ job, title, frameTag }: JobToday): BenchView['mine'][number] {
  return { id: job.id, reference: job.reference, state: job.state, title, frameTag };
}

function nextView(
  { job, title, frameTag, requestReference }: JobToday,
  booking: NonNullable<JobToday['booking']>,
): BenchView['next'] {
  const { startsAt, changeoverMin } = booking;
  return {
    jobId: job.id,
    reference: job.reference,
    title,
    frameTag: frameTag ?? '',
    startsAt: startsAt.toISOString(),
    requestReference,
    changeoverMin,
  };
}

function todayView(
  { job, title, frameTag, technician }: JobToday,
  { startsAt, endsAt }: NonNullable<JobToday['booking']>,
): BenchView['today'][number] {
  return {
    ...{ jobId: job.id, reference: job.reference, title, frameTag: frameTag ?? '', state: job.state, technician },
    ...{ startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() },
  };
}
