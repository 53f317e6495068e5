import { ownJob, rightMoment } from '#libs/bench/src/index.js';
import type { JobView } from '#libs/contract/src/index.js';
import type { Lab } from '#libs/matching/src/index.js';
import { JobRepository, labOf, LabRecords } from '#libs/records/src/index.js';
import type { Act, Happening, JobEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { CurrentLab } from '../../platform/current-lab.js';
import type { SignedIn } from '../../platform/signed-in.js';
import { readBenchFacts } from './bench-facts.js';
import type { BenchFacts } from './bench-facts.js';
import { JobViews } from './job-views.js';
import { refuseAny } from './refuse.js';

/** One act on one job, within its transaction; nobody else changes the job meanwhile. */
export interface AtWork extends Act {
  jobs: JobRepository;
  job: JobEntity;
  by: SignedIn;
  /** Everything that the bench decides from, as this transaction sees it. */
  facts(): Promise<BenchFacts>;
  /** The same with the register read anew, row by row: for what must never rest on anything kept. */
  freshFacts(): Promise<BenchFacts>;
}

/** What happened to the job, as it goes into the record. */
export type Done = Happening & {
  /** Whether results of the request changed. */
  results?: boolean;
};

/** Everything that is done to a job goes this way: read the facts, ask the core, change the rows, record it. */
@Injectable()
export class JobActs {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
    private readonly views: JobViews,
  ) {}

  /**
   * @param work null when there was nothing to do any more: a second tap, an answer that got lost
   * @returns the job as it stands then
   */
  async do(jobId: string, by: SignedIn, work: (at: AtWork) => Promise<Done | null>): Promise<JobView> {
    await this.records.act(by.id, async (act) => {
      const at = await this.begin(act, jobId, by);
      const done = await work(at);
      if (!done) return act.nothing(undefined);
      const { results = false, ...event } = done;
      await act.record({ ...event, subjectId: at.job.id });
      if (results) await act.tell('results', at.job.requestId);
    });
    return this.views.view(jobId, by);
  }

  private async begin(act: Act, jobId: string, by: SignedIn): Promise<AtWork> {
    const { manager } = act;
    const jobs = new JobRepository(manager);
    const job = await jobs.lock(jobId);
    const nowMs = () => act.now().getTime();
    const facts = async (lab: Promise<Lab>) => readBenchFacts(manager, job.id, await lab, nowMs());
    return {
      ...act,
      ...{ jobs, job, by },
      facts: () => facts(this.current.within(manager)),
      freshFacts: () => facts(labOf(manager, nowMs())),
    };
  }
}

/** @throws LabError `bench/not-yours` for anybody but the technician who took the job */
export function refuseOthers({ job, by }: Pick<AtWork, 'job' | 'by'>): void {
  refuseAny([ownJob({ job, byId: by.id })]);
}

/** @throws LabError `bench/wrong-moment` for a job in another state, with where it is and what may be done then */
export function refuseUnless(job: JobEntity, states: readonly string[], what: string): void {
  refuseAny([rightMoment(job, states, what)]);
}
